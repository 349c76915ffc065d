// Lines of red, green and blue over one axis, told apart by how they are drawn, not by colour; heights are square roots, so
// that a narrow peak does not flatten all the rest.

export const channelNames = ['Red', 'Green', 'Blue'] as const
/** Drawing units of a plot; the panel stretches it to its width. */
const width = 272
const height = 64

/** A line over even parts of the axis, `most` being the full height. */
function linePath(bins: readonly number[], most: number): string {
  const at = (value: number, i: number) =>
    `${(((i + 0.5) / bins.length) * width).toFixed(1)} ${(height - Math.sqrt(value / most) * (height - 2)).toFixed(1)}`
  return `M${bins.map(at).join('L')}`
}

interface ChannelLinesProps {
  /** One list of heights for each channel; one alone is a sensor of one channel. */
  readonly channels: readonly (readonly number[])[]
  readonly label: string
  /** Where the axis is named: share of its length, and the words. */
  readonly ticks: readonly (readonly [at: number, text: string])[]
}

export function ChannelLines({ channels, label, ticks }: ChannelLinesProps) {
  // The ends hold what is clipped and would outgrow the picture's own hills.
  const most = Math.max(...channels.flatMap((bins) => bins.slice(1, -1)), Number.MIN_VALUE)
  return (
    <figure className="channel-plot">
      <svg viewBox={`0 0 ${width} ${height}`} preserveAspectRatio="none" role="img" aria-label={label}>
        {ticks.map(([at]) => (
          <line key={at} className="plot-grid" x1={at * width} x2={at * width} y1={0} y2={height} />
        ))}
        {channels.map((bins, channel) => (
          <path
            key={channelNames[channel]}
            className="channel-line"
            data-channel={channels.length === 1 ? 1 : channel + 1}
            d={linePath(
              bins.map((value) => Math.min(value, most)),
              most,
            )}
          />
        ))}
      </svg>
      <div className="plot-ticks" aria-hidden="true">
        {ticks.map(([at, text]) => (
          <span key={at} style={{ left: `${at * 100}%` }} data-end={at === 0 ? 'first' : at === 1 ? 'last' : undefined}>
            {text}
          </span>
        ))}
      </div>
    </figure>
  )
}

/** How a channel's line is drawn, for a table that names it. */
export function LineSample({ channel }: { channel: number }) {
  return (
    <svg className="line-sample" viewBox="0 0 22 8" aria-hidden="true">
      <line className="channel-line" data-channel={channel + 1} x1={0} x2={22} y1={4} y2={4} />
    </svg>
  )
}
