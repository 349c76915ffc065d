// What a room of a step is given.
import type { Step } from '../../edits/stack.ts'

export interface StepRoomProps {
  readonly step: Step
}
