// Values of an operation's controls: the initial ones, and reading saved or typed ones so that nothing unusable reaches a picture.
import type { Control, Controls, ControlValue, Operation, ValuesOf } from './define.ts'

export type Values = Readonly<Record<string, ControlValue>>

/** The initial value of every control. */
export function initialValues<C extends Controls>(operation: { readonly controls: C }): ValuesOf<C> {
  const entries = Object.entries(operation.controls).map(([name, control]) => [name, control.initial])
  return Object.fromEntries(entries) as ValuesOf<C>
}

/** What is wrong with a value for this control, or null. */
function fault(control: Control, value: unknown): string | null {
  switch (control.kind) {
    case 'slider':
      return Number.isFinite(value) ? null : 'must be a finite number'
    case 'toggle':
      return typeof value === 'boolean' ? null : 'must be true or false'
    case 'choice': {
      const options = control.options.map((option) => option.value)
      return options.includes(value as string) ? null : `must be one of ${options.join(', ')}`
    }
    case 'numbers':
      if (!Array.isArray(value) || !value.every(Number.isFinite)) return 'must be a list of finite numbers'
      if (control.variable || value.length === control.initial.length) return null
      return `must hold ${control.initial.length} numbers, not ${value.length}`
    case 'text':
      return typeof value === 'string' ? null : 'must be text'
  }
}

/** The value itself, or the nearest end of a bounded slider. */
function clampValue(control: Control, value: ControlValue): ControlValue {
  if (control.kind !== 'slider' || !control.bounded) return value
  return Math.min(Math.max(value as number, control.min), control.max)
}

/**
 * Complete, usable values from saved or edited ones: migrated from `version`, missing ones initial, unknown ones dropped,
 * bounded sliders clamped. Throws a RangeError that says which control cannot be used and why.
 */
export function readValues<C extends Controls>(
  operation: Pick<Operation<C>, 'title' | 'version' | 'controls' | 'migrate'>,
  saved: Values,
  version: number = operation.version,
): ValuesOf<C> {
  if (version > operation.version) {
    throw new RangeError(
      `The step “${operation.title}” was saved by a newer version (${version}, known is ${operation.version}). Update to open it.`,
    )
  }
  const current = version < operation.version && operation.migrate ? operation.migrate({ ...saved }, version) : saved
  const entries = Object.entries(operation.controls).map(([name, control]) => {
    const value: ControlValue = current[name] ?? control.initial
    const problem = fault(control, value)
    if (problem) throw new RangeError(`“${control.label}” of the step “${operation.title}” ${problem}.`)
    return [name, clampValue(control, value)]
  })
  return Object.fromEntries(entries) as ValuesOf<C>
}
