// What is most often wanted of a step, in one press.
import { Button } from 'react-aria-components/Button'

import { endProbe, startProbe } from '../picture/probe-tool.ts'
import { useSession, useWorkbench } from '../workbench-context.tsx'
import type { StepRoomProps } from './step-rooms.ts'

export function ProbeShortcut() {
  const workbench = useWorkbench()
  const probing = useSession((session) => session.tool === 'probe')
  return (
    <Button
      className="button wide"
      aria-pressed={probing}
      onPress={() => (probing ? endProbe(workbench) : startProbe(workbench))}
    >
      {probing ? 'Put the probe away' : 'Probe the picture for a neutral'}
    </Button>
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
