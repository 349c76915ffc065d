// The way from the neutral to a second light: adds it, or goes to it where there is one.
import { Button } from 'react-aria-components/Button'

import { secondLight } from '../../operations/second-light.ts'
import { useChain } from '../chain/selected-step.ts'
import { useWorkbench } from '../workbench-context.tsx'

export function SecondLightDoor() {
  const workbench = useWorkbench()
  const step = useChain().find(({ operation }) => operation === secondLight.id)
  return (
    <div className="second-light-door">
      <Button
        className="button wide"
        onPress={() => (step ? workbench.selectStep(step.id) : workbench.addStep(secondLight.id))}
      >
        {step ? 'Go to the second light' : 'Add a second light'}
      </Button>
      {!step && <p className="control-note">A neutral of its own for the shade, where sun and shade part.</p>}
    </div>
  )
}
