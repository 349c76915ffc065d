// While the picture marks what is lost: of what, which slant is which channel and how much of it, and the way on. The slants are
// those of the picture's shader.
import { Button } from 'react-aria-components/Button'
import { Group } from 'react-aria-components/Group'

import { KeyHint } from '../key-hint.tsx'
import { useSession, useWorkbench } from '../workbench-context.tsx'
import { channelNames } from './channel-lines.tsx'
import { markNextClipping } from './clipping-tool.ts'
import { shareText } from './share-text.ts'
import { useOutputHistogram } from './use-output-histogram.ts'
import { useSensorShares } from './use-readings.ts'

/** Strokes of one pattern each in a square of 12: red falls, green rises, blue lies; black is dotted. */
const strokes = [
  'M-2 4L8 14M-2 -2L14 14M4 -2L14 8',
  'M-2 8L8 -2M-2 14L14 -2M4 14L14 4',
  'M0 2H12M0 6H12M0 10H12',
] as const
const dots = 'M3 3h0M9 3h0M3 9h0M9 9h0'

function Pattern({ path, isDots = false }: { path: string; isDots?: boolean }) {
  return (
    <svg className="clipping-pattern" data-dots={isDots || undefined} viewBox="0 0 12 12" aria-hidden="true">
      <path d={path} />
    </svg>
  )
}

function ChannelShares({ shares }: { shares: readonly (number | null)[] }) {
  const isOne = shares.length === 1
  return shares.map((share, channel) => (
    <li key={channelNames[channel]}>
      <Pattern path={isOne ? strokes.join('') : strokes[channel]} />
      {isOne ? 'all' : channelNames[channel].toLowerCase()} {share === null ? '–' : shareText(share)}
    </li>
  ))
}

function SensorShares() {
  return <ChannelShares shares={useSensorShares().map(([, clipped]) => clipped)} />
}

function OutputShares() {
  const spread = useOutputHistogram()
  return (
    <>
      <ChannelShares shares={spread?.map(({ atWhite }) => atWhite) ?? [null, null, null]} />
      <li>
        <Pattern path={dots} isDots />
        wholly black
      </li>
    </>
  )
}

export function ClippingLegend() {
  const workbench = useWorkbench()
  const marked = useSession((session) => (session.shown ? session.clippingShown : 'none'))
  if (marked === 'none') return null
  return (
    <Group className="clipping-legend" aria-label="What is marked in the picture">
      <strong>{marked === 'sensor' ? 'Clipped in the sensor' : 'Clipped in the output'}</strong>
      <ul>{marked === 'sensor' ? <SensorShares /> : <OutputShares />}</ul>
      <Button className="button quiet" onPress={() => markNextClipping(workbench)}>
        {marked === 'sensor' ? 'Next: output' : 'Next: no marks'}
        <KeyHint>L</KeyHint>
      </Button>
    </Group>
  )
}
