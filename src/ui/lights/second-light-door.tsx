// The way from the neutral to a second light: adds it, or goes to it where there is one.
import { Button } from 'react-aria-components/Button'

import { secondLight } from '../../operations/second-light.ts'
import { useChain } from '../chain/selected-step.ts'
import { useSession, useWorkbench } from '../workbench-context.tsx'

/** From this cut-on on sun and shade lie less than .06 stop apart: about .01 measured at 830 nm, .1 at 720 (computed from open spectra). */
const oneLightFromNm = 780

export function SecondLightDoor() {
  const workbench = useWorkbench()
  const filterNm = useSession(({ shown }) => shown?.facts.filterNm)
  const step = useChain().find(({ operation }) => operation === secondLight.id)
  if (!step && typeof filterNm === 'number' && filterNm >= oneLightFromNm)
    return <p className="control-note">Behind this filter one neutral serves sun and shade alike.</p>
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
