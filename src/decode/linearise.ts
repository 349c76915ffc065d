// Encoded codes of a developed file to sensor data: linear 16-bit codes in the file's own primaries, upright. The primaries stay,
// because clipping is a matter of single channels: mixed into other primaries, a channel at its end would no longer show.
import type { SensorData } from '../frame/frame.ts'
import type { Orientation } from '../sensor/orientation.ts'
import { uprightLinear, uprightMosaic } from '../sensor/turn-upright.ts'
import type { Curve } from './icc-reader.ts'

/** Linear code of the largest encoded one. */
const white = 65535

export interface EncodedPixels {
  readonly width: number
  readonly height: number
  readonly codes: Uint8Array | Uint8ClampedArray | Uint16Array
  /** Codes a pixel, and how many of them count from the first on. */
  readonly stride: number
  readonly channels: 1 | 3
  readonly bits: 8 | 16
  readonly inverted: boolean
}

/** Linear 0…1 of every encoded code of `bits`. */
export function linearTable(curve: Curve, bits: 8 | 16): Float64Array {
  const most = 2 ** bits - 1
  return Float64Array.from({ length: most + 1 }, (_, code) => Math.min(Math.max(curve(code / most), 0), 1))
}

/** The largest code is white and nothing else is, so that it alone counts as clipped. */
function codeTable(curve: Curve, bits: 8 | 16, inverted: boolean): Uint16Array {
  const codes = Uint16Array.from(linearTable(curve, bits), (linear) => Math.round(linear * white))
  codes[codes.length - 1] = white
  return inverted ? codes.toReversed() : codes
}

/** One channel becomes a sensor without filters, three become linear data. */
export function linearise(pixels: EncodedPixels, curves: readonly Curve[], orientation: Orientation): SensorData {
  const { width, height, codes: encoded, stride, channels, bits, inverted } = pixels
  const codes = new Uint16Array(width * height * channels)
  for (let channel = 0; channel < channels; channel++) {
    const table = codeTable(curves[channel], bits, inverted)
    for (let from = channel, to = channel; to < codes.length; from += stride, to += channels)
      codes[to] = table[encoded[from]]
  }
  const area = { x: 0, y: 0, width, height }
  if (channels === 3) {
    const stored = { codes, stride: width, samples: 3, black: [0, 0, 0], white } as const
    return uprightLinear(stored, area, orientation)
  }
  const colours = { columns: 1, rows: 1, entries: [1] } as const
  const black = { columns: 1, rows: 1, entries: [0] }
  return uprightMosaic({ codes, stride: width, samples: 1, colours, black, white }, area, orientation)
}
