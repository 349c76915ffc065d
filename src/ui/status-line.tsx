// The line under the picture: the probe and what it reads on the left, how the picture is seen on the right.
import { useStore } from 'zustand'
import { Button } from 'react-aria-components/Button'

import { KeyHint } from './key-hint.tsx'
import { ProbeReading } from './picture/probe-reading.tsx'
import { endProbe, startProbe } from './picture/probe-tool.ts'
import { screen } from './screen-store.ts'
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
      <ZoomControls />
    </footer>
  )
}
