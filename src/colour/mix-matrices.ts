// 3×3 channel mixes on linear RGB, row-major: row i holds the weights of red, green and blue in output channel i.
import { determinant, type Mat3 } from '../math/mat3.ts'

export const IDENTITY_MIX: Mat3 = [1, 0, 0, 0, 1, 0, 0, 0, 1]

/** Red and blue change places. */
export const RED_BLUE_EXCHANGE: Mat3 = [0, 0, 1, 0, 1, 0, 1, 0, 0]

/** Every channel moves one place on: red takes blue, green takes red, blue takes green; a turn by 120° about the grey axis. */
export const CYCLIC_MIX: Mat3 = [0, 0, 1, 1, 0, 0, 0, 1, 0]

/** The way from no exchange (`amount` 0) to the whole one (1). At .5 red and blue become one: the mix is singular there. */
export function partialExchange(amount: number): Mat3 {
  return IDENTITY_MIX.map((weight, i) => (1 - amount) * weight + amount * RED_BLUE_EXCHANGE[i])
}

/** Sums of the three rows: what becomes of white (1, 1, 1). All 1 keeps greys. */
export function rowSums(mix: Mat3): [red: number, green: number, blue: number] {
  return [mix[0] + mix[1] + mix[2], mix[3] + mix[4] + mix[5], mix[6] + mix[7] + mix[8]]
}

/** Whether the mix nearly loses a dimension of colour, |determinant| < .05 (limit: common practice, no source). */
export function isNearSingular(mix: Mat3): boolean {
  return Math.abs(determinant(mix)) < 0.05
}
