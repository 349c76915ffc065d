// Demosaicing of any other array, 6×6 above all: green by plane fits to its neighbours, then red and blue as green plus a
// plane fit to the colour differences, which are smoother than the colours. Gains equalise the channels for the
// differences and are divided out again. Normalised photosites in, `cameraRgb` out.
import type { Cfa, CfaColour } from '../frame/frame.ts'
import { planeKernel, type Tap } from './plane-kernels.ts'
import type { NormalisedTile } from './tile.ts'

/** Green is dense and wants a narrow kernel; differences are sparse and may be smoother (our choice, in photosites). */
export const green = { reach: 2, sigma: 0.8 }
export const difference = { reach: 3, sigma: 1.2 }

/** Photosites the kernels reach beyond a pixel, one after the other. */
export const anyReach = green.reach + difference.reach

interface Kernel {
  readonly offsets: Int32Array
  readonly weights: Float64Array
}

/** Kernels of one colour for each phase of the array, offsets for rows of `stride`. */
function kernelsOf(cfa: Cfa, colour: CfaColour, { reach, sigma }: typeof green, stride: number): Kernel[] {
  return cfa.colours.map((_, phase) => {
    const taps: readonly Tap[] = planeKernel(
      cfa,
      colour,
      phase % cfa.columns,
      Math.floor(phase / cfa.columns),
      reach,
      sigma,
    )
    return {
      offsets: Int32Array.from(taps, ({ x, y }) => y * stride + x),
      weights: Float64Array.from(taps, ({ weight }) => weight),
    }
  })
}

function apply({ offsets, weights }: Kernel, values: Float32Array, at: number): number {
  let sum = 0
  for (let tap = 0; tap < offsets.length; tap++) sum += weights[tap] * values[at + offsets[tap]]
  return sum
}

/** Fills RGB of `rgba` for a tile whose upper left pixel has the colour at (`left`, `top`) of the array. */
export function demosaicAny(
  { values, width, height, apron }: NormalisedTile,
  cfa: Cfa,
  left: number,
  top: number,
  gains: readonly [number, number, number],
  rgba: Float32Array,
): void {
  const phaseAt = (x: number, y: number) => {
    const row = (((top + y - apron) % cfa.rows) + cfa.rows) % cfa.rows
    const column = (((left + x - apron) % cfa.columns) + cfa.columns) % cfa.columns
    return row * cfa.columns + column
  }
  const ofGreen = kernelsOf(cfa, 1, green, width)
  // Gained green everywhere the differences need it, then gained differences at the photosites of red and blue.
  const greens = new Float32Array(values.length)
  const differences = new Float32Array(values.length)
  for (let y = green.reach; y < height - green.reach; y++) {
    for (let x = green.reach; x < width - green.reach; x++) {
      const i = y * width + x
      const phase = phaseAt(x, y)
      const colour = cfa.colours[phase]
      greens[i] = gains[1] * (colour === 1 ? values[i] : apply(ofGreen[phase], values, i))
      differences[i] = gains[colour] * values[i] - greens[i]
    }
  }
  const ofRed = kernelsOf(cfa, 0, difference, width)
  const ofBlue = kernelsOf(cfa, 2, difference, width)
  for (let y = apron, to = 0; y < height - apron; y++) {
    for (let x = apron; x < width - apron; x++, to += 4) {
      const i = y * width + x
      const phase = phaseAt(x, y)
      rgba[to] = (greens[i] + apply(ofRed[phase], differences, i)) / gains[0]
      rgba[to + 1] = greens[i] / gains[1]
      rgba[to + 2] = (greens[i] + apply(ofBlue[phase], differences, i)) / gains[2]
      rgba[to + cfa.colours[phase]] = values[i]
    }
  }
}
