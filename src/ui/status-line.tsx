// The line under the picture: the probe and what it reads on the left, how the picture is seen and running work on the right.
import { Minus, Plus } from 'lucide-react'
import { useStore } from 'zustand'
import { Button } from 'react-aria-components/Button'
import { Group } from 'react-aria-components/Group'

import type { Probe } from '../workbench/session.ts'
import { formatNumber } from './format-number.ts'
import { IconButton } from './icon-button.tsx'
import { endProbe, keepMark, keepNeutral, startProbe } from './picture/probe-tool.ts'
import { toggleSampleWay } from './picture/outline-tool.ts'
import { stepSampleRadius } from './picture/sample-radius.ts'
import { screen } from './screen-store.ts'
import { TaskProgress } from './task-progress.tsx'
import { useSession, useWorkbench } from './workbench-context.tsx'
import { ZoomControls } from './picture/zoom-controls.tsx'

function PointedPixel() {
  const pointer = useStore(screen, ({ pointer }) => pointer)
  const shown = useSession((session) => session.shown)
  if (!pointer || !shown) return null
  return (
    <span className="reading">
      column {Math.floor(pointer.x * shown.width)}, row {Math.floor(pointer.y * shown.height)}
    </span>
  )
}

/** What the sensor saw there, as shares of saturation before any gain. */
function sensorWords({ reading: { meanCameraRgb } }: Probe): string {
  if (!meanCameraRgb) return 'nothing usable under the probe'
  const [red, green, blue] = meanCameraRgb.map((level) => formatNumber(level, 3))
  return `sensor: red ${red}, green ${green}, blue ${blue}`
}

const outlineHint = 'Draw round anything that could be neutral, then keep what it gives'
const hints = {
  neutral: 'Point at anything that could be neutral: a click keeps it, shift with a click makes it a mark',
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

function ProbeReading() {
  const workbench = useWorkbench()
  const probe = useSession((session) => session.probe)
  const target = useSession((session) => session.probeTarget)
  const isOutline = useSession((session) => session.sampleWay === 'outline')
  const hint = isOutline ? outlineHint : hints[target?.light ?? 'neutral']
  return (
    <>
      {!isOutline && <SampleSize />}
      <Button className="button plain" aria-pressed={isOutline} onPress={() => toggleSampleWay(workbench)}>
        Outline
        <KeyHint>O</KeyHint>
      </Button>
      <span className="reading verdict">{probe ? probe.reading.sentence : hint}</span>
      {probe && <span className="reading sensor-words">{sensorWords(probe)}</span>}
      {probe?.neutral && (
        <>
          <Button className="button keep" data-stays={isOutline || undefined} onPress={() => keepMark(workbench)}>
            <span>
              Keep <span className="at-ease">as a </span>mark
            </span>
            <KeyHint>M</KeyHint>
          </Button>
          <Button
            className="button prime keep"
            data-stays={isOutline || undefined}
            onPress={() => keepNeutral(workbench)}
          >
            <span>
              Keep <span className="at-ease">{target ? 'as' : 'this'} </span>
              {target?.light ?? 'neutral'}
            </span>
          </Button>
        </>
      )}
    </>
  )
}

function KeyHint({ children }: { children: string }) {
  const keysOn = useStore(screen, (state) => state.singleKeys)
  if (!keysOn) return null
  return (
    <kbd className="key-hint" aria-hidden="true">
      {children}
    </kbd>
  )
}

export function StatusLine() {
  const workbench = useWorkbench()
  const probing = useSession((session) => session.tool === 'probe')
  const canProbe = useSession((session) => session.shown !== null)
  return (
    <footer className="status">
      <Button
        className="button"
        aria-pressed={probing}
        isDisabled={!canProbe}
        onPress={() => (probing ? endProbe(workbench) : startProbe(workbench))}
      >
        <span className="probe-ring-sign" aria-hidden="true" />
        Probe
        <KeyHint>N</KeyHint>
      </Button>
      {probing ? <ProbeReading /> : <PointedPixel />}
      <span className="spring" />
      <TaskProgress />
      <ZoomControls />
    </footer>
  )
}
