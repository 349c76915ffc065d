// Short ways to write the controls of an operation down.
import type { ChoiceControl, NumbersControl, SliderControl, ToggleControl } from './define.ts'

interface SliderOptions extends Pick<SliderControl, 'group' | 'ends' | 'inRoom'> {
  readonly bounded?: boolean
}

/** A slider whose typed value may go beyond its travel, unless `bounded`. */
export function slider(
  label: string,
  unit: string,
  min: number,
  max: number,
  step: number,
  initial: number,
  { bounded = false, ...place }: SliderOptions = {},
): SliderControl {
  return { kind: 'slider', label, unit, min, max, step, initial, bounded, ...place }
}

export function toggle(label: string, initial: boolean): ToggleControl {
  return { kind: 'toggle', label, initial }
}

export function choice(label: string, options: ChoiceControl['options'], initial: string): ChoiceControl {
  return { kind: 'choice', label, options, initial }
}

/** Numbers with an editor of their own: as many as there are at first, or any count where `variable`. */
export function numbers(label: string, initial: readonly number[], { variable = false } = {}): NumbersControl {
  return { kind: 'numbers', label, initial, variable }
}
