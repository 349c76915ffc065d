// A slider's name where its group is not seen beside it: for undo, typed numbers and ears.
import type { SliderControl } from '../../operations/define.ts'

/** e.g. “Cyan to red: shadows”. */
export function spokenLabel({ label, group }: SliderControl): string {
  return group === undefined ? label : `${group}: ${label}`
}
