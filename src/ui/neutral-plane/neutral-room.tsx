// What stands below the controls of the neutral: sliders that act on the finished picture, the plane, and the ways to a second light and to
// the neutral that a camera is set to.
import { Button } from 'react-aria-components/Button'

import { SecondLightDoor } from '../lights/second-light-door.tsx'
import type { StepRoomProps } from '../panel/step-room-props.ts'
import { openDialog } from '../screen-store.ts'
import { AsSeen } from './as-seen.tsx'
import { NeutralPlane } from './neutral-plane.tsx'

export function NeutralRoom({ step }: StepRoomProps) {
  return (
    <>
      <AsSeen step={step} />
      <NeutralPlane step={step} />
      <SecondLightDoor />
      <Button className="button wide" onPress={() => openDialog('in camera')}>
        Neutral in camera
      </Button>
    </>
  )
}
