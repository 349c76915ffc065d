// What stands below the controls of the neutral: sliders that act on the finished picture, the plane, and the way to a second light.
import { SecondLightDoor } from '../lights/second-light-door.tsx'
import type { StepRoomProps } from '../panel/step-rooms.ts'
import { AsSeen } from './as-seen.tsx'
import { NeutralPlane } from './neutral-plane.tsx'

export function NeutralRoom({ step }: StepRoomProps) {
  return (
    <>
      <AsSeen step={step} />
      <NeutralPlane step={step} />
      <SecondLightDoor />
    </>
  )
}
