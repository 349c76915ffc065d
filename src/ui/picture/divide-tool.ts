// Dividing the picture and making it whole again, the same for button and key; and where its line may stand.
import type { Workbench } from '../../workbench/workbench.ts'

const middle = 0.5
/** The line stays this far inside the picture's window, as a share of its width (our choice). */
const leastShare = 0.02
/** Where the line stood when the picture was last divided. */
let lastDivide = middle

export function toggleDivide(workbench: Workbench): void {
  const { divide } = workbench.session.getState()
  if (divide !== null) lastDivide = divide
  workbench.setDivide(divide === null ? lastDivide : null)
}

/** Moves the line to a share of the picture's width, as far as it may stand there. */
export function placeDivide(workbench: Workbench, share: number): void {
  workbench.setDivide(Math.min(Math.max(share, leastShare), 1 - leastShare))
}
