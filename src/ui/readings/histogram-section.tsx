// Two histograms: what the sensor recorded before any gain, and what the finished picture is spread over.
import { HISTOGRAM_STOPS } from '../../frame/sensor-histogram.ts'
import { ChannelLines } from './channel-lines.tsx'
import { ClippingTable } from './clipping-table.tsx'
import { useOutputHistogram } from './use-output-histogram.ts'
import { useReadings, useSensorShares } from './use-readings.ts'
import { useSession } from '../workbench-context.tsx'

const stopTicks = [10, 8, 6, 4, 2, 0].map(
  (stops) => [1 - stops / HISTOGRAM_STOPS, stops === 0 ? '0' : `−${stops}`] as const,
)
const shareTicks = [0, 25, 50, 75, 100].map((percent) => [percent / 100, `${percent}`] as const)

function SensorPart() {
  const isShown = useSession((session) => session.shown !== null)
  const histogram = useReadings()?.histogram
  const shares = useSensorShares()
  if (!isShown) return null
  return (
    <div className="histogram" aria-busy={!histogram}>
      <h3>
        Sensor <span className="unit">stops below saturation</span>
      </h3>
      <ChannelLines
        channels={histogram?.map(({ bins }) => bins) ?? []}
        label="How the photosites are spread over the stops below saturation; height is the square root of their number"
        ticks={stopTicks}
      />
      <ClippingTable
        caption="Photosites at the ends, before any gain"
        columns={['black', 'clipped']}
        shares={shares}
        marks="sensor"
        button="Mark what the sensor clipped"
      />
    </div>
  )
}

/** Until the picture has been read. */
const unknownShares = [null, null, null].map((share) => [share, share] as const)

function OutputPart() {
  const spread = useOutputHistogram()
  return (
    <div className="histogram" aria-busy={!spread}>
      <h3>
        Output <span className="unit">% of its range</span>
      </h3>
      <ChannelLines
        channels={spread?.map(({ bins }) => bins) ?? []}
        label="How the finished picture is spread over its range; height is the square root of the share"
        ticks={shareTicks}
      />
      <ClippingTable
        caption="Pixels of the finished picture at the ends of its range"
        columns={['at black', 'at white']}
        shares={spread?.map(({ atBlack, atWhite }) => [atBlack, atWhite] as const) ?? unknownShares}
        marks="output"
        button="Mark what the output clips"
      />
    </div>
  )
}

export function Histograms() {
  return (
    <>
      <SensorPart />
      <OutputPart />
    </>
  )
}
