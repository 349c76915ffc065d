// Dividing the picture and making it whole again, the same for button and key.
import type { Workbench } from '../../workbench/workbench.ts'

const middle = 0.5
/** Where the line stood when the picture was last divided. */
let lastDivide = middle

export function toggleDivide(workbench: Workbench): void {
  const { divide } = workbench.session.getState()
  if (divide !== null) lastDivide = divide
  workbench.setDivide(divide === null ? lastDivide : null)
}
