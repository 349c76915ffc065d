// What a bench measures: our number beside that of a general tool for the same work. Ratios, because times depend on
// the machine. Every tests/bench/*.bench.ts exports `rows`, a generator of these.

export interface BenchRow {
  readonly name: string
  readonly value: number
  readonly unit: string
  /** The same work done by the tool named in `name`, in `unit`; null where that tool is missing on this machine. */
  readonly reference: number | null
  /** `value / reference`; null without a reference. */
  readonly ratio: number | null
}

export type BenchRows = () => AsyncIterable<BenchRow>

/** A row from two numbers in the same unit. */
export function benchRow(name: string, value: number, unit: string, reference: number | null): BenchRow {
  return { name, value, unit, reference, ratio: reference === null ? null : value / reference }
}

const show = (number: number | null) => (number === null ? 'missing' : number.toPrecision(3))

/** One line for the terminal. */
export function benchLine({ name, value, unit, reference, ratio }: BenchRow): string {
  return `${name.padEnd(84)} ${show(value).padStart(8)} ${unit.padEnd(3)} ÷ ${show(reference).padStart(8)} = ${show(ratio)}`
}
