// 3×3 channel mixes on linear RGB, row-major: row i holds the weights of red, green and blue in output channel i.
import { determinant, IDENTITY, type Mat3 } from '../math/mat3.ts'
import { workingToXyz } from './working-space.ts'

export const IDENTITY_MIX: Mat3 = IDENTITY

/** Red and blue change places. */
export const RED_BLUE_EXCHANGE: Mat3 = [0, 0, 1, 0, 1, 0, 1, 0, 0]

/** Every channel moves one place on: red takes blue, green takes red, blue takes green; a turn by 120° about the grey axis. */
export const CYCLIC_MIX: Mat3 = [0, 0, 1, 1, 0, 0, 0, 1, 0]

/** The other way round: red takes green, green takes blue, blue takes red. */
export const CYCLIC_MIX_BACK: Mat3 = [0, 1, 0, 0, 0, 1, 1, 0, 0]

/** The way from no exchange (`amount` 0) to the whole one (1). At .5 red and blue become one: the mix is singular there. */
export function partialExchange(amount: number): Mat3 {
  return IDENTITY_MIX.map((weight, i) => (1 - amount) * weight + amount * RED_BLUE_EXCHANGE[i])
}

/** The amount for which `mix` is a partial exchange, to four digits, or null where it is none. */
export function amountOfExchange(mix: Mat3): number | null {
  const amount = mix[2]
  return partialExchange(amount).every((weight, i) => Math.abs(weight - mix[i]) < 5e-5) ? amount : null
}

/** Sums of the three rows: what becomes of white (1, 1, 1). All 1 keeps greys. */
export function rowSums(mix: Mat3): [red: number, green: number, blue: number] {
  return [mix[0] + mix[1] + mix[2], mix[3] + mix[4] + mix[5], mix[6] + mix[7] + mix[8]]
}

/** Two weights whose sum lies this near to 0 cannot be scaled to another sum (our choice). */
const LEAST_SCALED = 0.05

/**
 * The mix with one weight changed and the sum of its row held: the row's other two are scaled, so that they keep their
 * proportion, or, where they cancel or would change sign, moved by equal parts.
 */
export function withWeight(mix: Mat3, index: number, weight: number): Mat3 {
  const first = index - (index % 3)
  const others = [first, first + 1, first + 2].filter((i) => i !== index)
  const sum = mix[others[0]] + mix[others[1]]
  const wanted = sum + mix[index] - weight
  const scaled = Math.abs(sum) > LEAST_SCALED && wanted / sum >= 0
  const next = mix.with(index, weight)
  for (const i of others) next[i] = scaled ? (mix[i] * wanted) / sum : mix[i] + (wanted - sum) / 2
  return next
}

/**
 * The mix followed by as much grey as brings the luminance Y of linear `workingRgb` back to what it was. Grey is added rather
 * than light multiplied: so it stays one matrix, and dark pixels with odd signs stay where they are. Sums of 1 stay 1.
 */
export function withLuminanceKept(mix: Mat3): Mat3 {
  const luminance = workingToXyz.slice(3, 6)
  const missing = luminance.map(
    (share, column) => share - luminance.reduce((sum, weight, row) => sum + weight * mix[row * 3 + column], 0),
  )
  return mix.map((weight, i) => weight + missing[i % 3])
}

/** Whether the mix nearly loses a dimension of colour, |determinant| < .05 (limit: common practice, no source). */
export function isNearSingular(mix: Mat3): boolean {
  return Math.abs(determinant(mix)) < 0.05
}
