// What is most often wanted of a step, in one press.
import { Button } from 'react-aria-components/Button'

import type { Step } from '../../edits/stack.ts'
import { endProbe, startProbe } from '../picture/probe-tool.ts'
import { useSession, useWorkbench } from '../workbench-context.tsx'

export function StepShortcut({ step }: { step: Step }) {
  const workbench = useWorkbench()
  const probing = useSession((session) => session.tool === 'probe')

  if (step.operation === 'neutral') {
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
  if (step.operation === 'hueTurn') {
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
  return null
}
