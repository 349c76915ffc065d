// How far a colour table file is from the chain it was made of: differences of finished colours in CIEDE2000 over a stated set.
import { ciede2000 } from '../colour/ciede2000.ts'
import { workingToLab } from '../colour/cielab.ts'
import { decodeFromTable, encodeForTable, type TableEncoding } from '../colour/table-encoding.ts'
import { transform } from '../math/mat3.ts'
import { readCube } from '../math/read-table.ts'
import type { ColourMap } from '../pipeline/pointwise-map.ts'

export interface TableAccuracy {
  /** Colours compared. */
  readonly count: number
  readonly mean: number
  /** 99 of 100 colours differ by no more than this. */
  readonly p99: number
  readonly largest: number
  /** Share of the set that lies outside the file's range and was left out. */
  readonly outside: number
}

/** Whether a linear `workingRgb` colour lies within the 0…1 of an encoding; `rgb` becomes its numbers there. */
function encodeWithin(encoding: TableEncoding, rgb: Float64Array): boolean {
  const linear = transform(encoding.fromWorking, [rgb[0], rgb[1], rgb[2]])
  for (let i = 0; i < 3; i++) rgb[i] = encodeForTable(encoding, linear[i])
  // A hair of room: matrices bring a colour of the corner back a rounding outside.
  return rgb.every((value) => value >= -1e-9 && value <= 1 + 1e-9)
}

/** A map through a cube of an encoding, as any reader of the file has it: false outside its 0…1. */
export function throughCube(data: Float32Array, size: number, encoding: TableEncoding): (rgb: Float64Array) => boolean {
  return (rgb) => {
    if (!encodeWithin(encoding, rgb)) return false
    readCube(data, size, rgb)
    const [r, g, b] = rgb.map((value) => decodeFromTable(encoding, value))
    rgb.set(transform(encoding.toWorking, [r, g, b]))
    return true
  }
}

/** The same where the file's results end at 0 and 1 too: false as well for colours that the chain leads outside. */
export function throughLink(
  data: Float32Array,
  size: number,
  encoding: TableEncoding,
  direct: ColourMap,
): (rgb: Float64Array) => boolean {
  const within = throughCube(data, size, encoding)
  const wanted = new Float64Array(3)
  return (rgb) => {
    wanted.set(rgb)
    direct(wanted)
    return encodeWithin(encoding, wanted) && within(rgb)
  }
}

/** Compares `through` with `direct` over linear `workingRgb` colours, interleaved. `through` says false outside its range. */
export function tableAccuracy(
  colours: Float64Array,
  direct: ColourMap,
  through: (rgb: Float64Array) => boolean,
): TableAccuracy {
  const apart: number[] = []
  const [wanted, given] = [new Float64Array(3), new Float64Array(3)]
  for (let i = 0; i < colours.length; i += 3) {
    wanted.set(colours.subarray(i, i + 3))
    given.set(wanted)
    if (!through(given)) continue
    direct(wanted)
    apart.push(ciede2000(workingToLab(wanted), workingToLab(given)))
  }
  apart.sort((a, b) => a - b)
  const count = apart.length
  return {
    count,
    mean: count === 0 ? 0 : apart.reduce((sum, value) => sum + value, 0) / count,
    p99: apart[Math.ceil(count * 0.99) - 1] ?? 0,
    largest: apart.at(-1) ?? 0,
    outside: colours.length === 0 ? 0 : 1 - count / (colours.length / 3),
  }
}

/** Points a side of the even set (our choice): between the nodes of all cubes that are written. */
const EVEN = 14

/** Colours spread evenly over the numbers of an encoding, within what white and primaries of `workingRgb` span, interleaved. */
export function evenColours(): Float64Array {
  const colours = new Float64Array(EVEN ** 3 * 3)
  for (let i = 0; i < EVEN ** 3; i++) {
    const steps = [i % EVEN, Math.floor(i / EVEN) % EVEN, Math.floor(i / EVEN ** 2)]
    // Even steps to the eye, roughly: a square as in common encodings.
    colours.set(
      steps.map((step) => ((step + 0.5) / EVEN) ** 2),
      i * 3,
    )
  }
  return colours
}
