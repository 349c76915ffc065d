// The probe's part of the status line: the sample, what it reads, and what is made of it. While it roams only words are drawn anew.
import { Minus, Plus } from 'lucide-react'
import { Button } from 'react-aria-components/Button'
import { Group } from 'react-aria-components/Group'

import type { Probe } from '../../workbench/session.ts'
import { formatNumber } from '../../text/format-number.ts'
import { IconButton } from '../icon-button.tsx'
import { KeyHint } from '../key-hint.tsx'
import { useSession, useWorkbench } from '../workbench-context.tsx'
import { toggleSampleWay } from './outline-tool.ts'
import { keepMark, makeNeutral } from './probe-tool.ts'
import { stepSampleRadius } from './sample-radius.ts'

/** What the sensor saw there, as shares of saturation before any gain. */
function sensorWords({ reading: { meanCameraRgb } }: Probe): string {
  if (!meanCameraRgb) return 'nothing usable under the probe'
  const [red, green, blue] = meanCameraRgb.map((level) => formatNumber(level, 3))
  return `sensor: red ${red}, green ${green}, blue ${blue}`
}

const outlineHint = 'Draw round anything that could be neutral, then make it so'
const hints = {
  neutral: 'Point at anything that could be neutral: a click makes it so, shift with a click keeps it as a mark',
  sun: 'Point at a plain surface in the sun that also lies in shade; a click keeps it',
  shade: 'Point at the same kind of surface in the shade; a click keeps it',
}

function SampleSize() {
  const workbench = useWorkbench()
  const radius = useSession((session) => session.sampleRadiusPx)
  return (
    <Group className="sample-size" aria-label="Sample size">
      <IconButton label="Smaller sample" onPress={() => stepSampleRadius(workbench, -1)}>
        <Minus />
      </IconButton>
      <span className="sample-words">
        <span className="at-ease">sample </span>
        {Math.round(radius * 2)} px<span className="at-ease"> wide</span>
      </span>
      <IconButton label="Larger sample" onPress={() => stepSampleRadius(workbench, 1)}>
        <Plus />
      </IconButton>
    </Group>
  )
}

function ReadWords() {
  const probe = useSession((session) => session.probe)
  const light = useSession((session) => session.probeTarget?.light ?? 'neutral')
  const isOutline = useSession((session) => session.sampleWay === 'outline')
  const hint = isOutline ? outlineHint : hints[light]
  return (
    <>
      <span className="reading verdict">{probe ? probe.reading.sentence : hint}</span>
      {probe && <span className="reading sensor-words">{sensorWords(probe)}</span>}
    </>
  )
}

function KeepButtons({ isOutline }: { isOutline: boolean }) {
  const workbench = useWorkbench()
  const light = useSession((session) => session.probeTarget?.light)
  const canKeep = useSession((session) => session.probe !== null && session.probe.neutral !== null)
  if (!canKeep) return null
  return (
    <>
      <Button className="button keep" data-stays={isOutline || undefined} onPress={() => keepMark(workbench)}>
        <span>
          Keep <span className="at-ease">as a </span>mark
        </span>
        <KeyHint>M</KeyHint>
      </Button>
      <Button className="button prime keep" data-stays={isOutline || undefined} onPress={() => makeNeutral(workbench)}>
        {light ? (
          <span>
            Keep <span className="at-ease">as </span>
            {light}
          </span>
        ) : (
          'Make it neutral'
        )}
      </Button>
    </>
  )
}

export function ProbeReading() {
  const workbench = useWorkbench()
  const isOutline = useSession((session) => session.sampleWay === 'outline')
  return (
    <>
      {!isOutline && <SampleSize />}
      <Button className="button plain" aria-pressed={isOutline} onPress={() => toggleSampleWay(workbench)}>
        Outline
        <KeyHint>O</KeyHint>
      </Button>
      <ReadWords />
      <KeepButtons isOutline={isOutline} />
    </>
  )
}
