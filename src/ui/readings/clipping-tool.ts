// Marking in the picture what is lost, the same for key and button: from nothing to the sensor, to the output and back.
import type { ClippingShown } from '../../workbench/session.ts'
import type { Workbench } from '../../workbench/workbench.ts'

const following: Record<ClippingShown, ClippingShown> = { none: 'sensor', sensor: 'output', output: 'none' }

export function markNextClipping(workbench: Workbench): void {
  workbench.showClipping(following[workbench.session.getState().clippingShown])
}
