// What a step shows beside its controls: by operation, one line each. `above` stands before the controls, `below` after them.
import type { ComponentType } from 'react'

import type { Step } from '../../edits/stack.ts'
import { SecondLightDoor } from '../lights/second-light-door.tsx'
import { LightPicks, ShadePlace } from '../lights/second-light-rooms.tsx'
import { InversionShortcut, ProbeShortcut } from './step-shortcuts.tsx'

export interface StepRoomProps {
  readonly step: Step
}
interface StepRooms {
  readonly above?: ComponentType<StepRoomProps>
  readonly below?: ComponentType<StepRoomProps>
}

export const stepRooms: Readonly<Record<string, StepRooms>> = {
  neutral: { above: ProbeShortcut, below: SecondLightDoor },
  secondLight: { above: LightPicks, below: ShadePlace },
  hueTurn: { above: InversionShortcut },
}
