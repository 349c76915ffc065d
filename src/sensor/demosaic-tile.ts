// Full resolution, tile by tile: the reference that the graphics engine must match. Sensor codes in; ungained `cameraRgb`
// out with the largest normalised photosite of the 3×3 neighbourhood in alpha, so that the chain runs on it exactly as on
// the overview.
import type { LinearData, SensorData } from '../frame/frame.ts'
import { isBayer } from './cfa.ts'
import { anyReach, demosaicAny } from './demosaic-any.ts'
import { bayerReach, demosaicBayer } from './demosaic-bayer.ts'
import { liesWithin, type Rectangle } from './rectangle.ts'
import { normaliseTile, writePeaks } from './tile.ts'

/** Three-channel data needs no interpolation: alpha is the pixel's own largest channel. */
function readLinear({ codes, width, height, black, white }: LinearData, area: Rectangle): Float32Array {
  if (!liesWithin(area, width, height)) throw new RangeError('A tile must lie within the frame.')
  const rgba = new Float32Array(area.width * area.height * 4)
  const scale = black.map((code) => 1 / (white - code))
  for (let y = 0, to = 0; y < area.height; y++) {
    let from = ((area.y + y) * width + area.x) * 3
    for (let x = 0; x < area.width; x++, from += 3, to += 4) {
      for (let c = 0; c < 3; c++) rgba[to + c] = (codes[from + c] - black[c]) * scale[c]
      rgba[to + 3] = Math.max(rgba[to], rgba[to + 1], rgba[to + 2])
    }
  }
  return rgba
}

/**
 * The pixels of `area` as interleaved RGBA, 4 numbers each. `gains` (R, G, B, above 0) equalise the channels for the
 * interpolation only. One-channel mosaics give three equal channels. Beyond its borders a frame is mirrored.
 * Throws a RangeError where the area leaves the frame.
 */
export function demosaicTile(
  sensor: SensorData,
  area: Rectangle,
  gains: readonly [number, number, number],
): Float32Array {
  if (sensor.kind === 'linear') return readLinear(sensor, area)
  const { cfa } = sensor
  const rgba = new Float32Array(area.width * area.height * 4)
  if (cfa.colours.every((colour) => colour === 1)) {
    const { values } = normaliseTile(sensor, area, 0)
    values.forEach((value, pixel) => rgba.fill(value, pixel * 4, pixel * 4 + 4))
    return rgba
  }
  const bayer = isBayer(cfa)
  const tile = normaliseTile(sensor, area, bayer ? bayerReach : anyReach)
  const demosaic = bayer ? demosaicBayer : demosaicAny
  demosaic(tile, cfa, area.x, area.y, gains, rgba)
  writePeaks(tile, rgba)
  return rgba
}
