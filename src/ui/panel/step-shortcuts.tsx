// What is most often wanted of a step, in one press.
import { Button } from 'react-aria-components/Button'

import { formatNumber } from '../../text/format-number.ts'
import { DevelopedNote } from '../neutral-plane/developed-note.tsx'
import { endProbe, startProbe } from '../picture/probe-tool.ts'
import { useSession, useWorkbench } from '../workbench-context.tsx'
import type { StepRoomProps } from './step-room-props.ts'

/** The probe's own values, while the controls below go on showing the frame's; of one height whether it is up or not. */
function ProbeValues({ isUp }: { isUp: boolean }) {
  const neutral = useSession((session) => session.probe?.neutral ?? null)
  if (!isUp) return <p className="probe-values">Roam, and the whole picture follows.</p>
  const written = (stops: number | undefined) => (stops === undefined ? '–' : formatNumber(stops, 2, true))
  return (
    <p className="probe-values">
      <span>Probe</span>
      <span>red {written(neutral?.redStops)}</span>
      <span>blue {written(neutral?.blueStops)}</span>
    </p>
  )
}

export function ProbeShortcut() {
  const workbench = useWorkbench()
  const probing = useSession((session) => session.tool === 'probe')
  return (
    <>
      <DevelopedNote />
      <Button
        className="button wide"
        aria-pressed={probing}
        onPress={() => (probing ? endProbe(workbench) : startProbe(workbench))}
      >
        {probing ? 'Put the probe away' : 'Probe the picture for a neutral'}
      </Button>
      <ProbeValues isUp={probing} />
    </>
  )
}

export function InversionShortcut({ step }: StepRoomProps) {
  const workbench = useWorkbench()
  const inverted = Math.abs(Number(step.values.angleDeg)) === 180
  return (
    <Button
      className="button wide"
      onPress={() => workbench.setValues(step.id, { angleDeg: inverted ? 0 : 180 }, 'Hue inversion')}
    >
      {inverted ? 'Turn hues back' : 'Invert hues'}
    </Button>
  )
}
