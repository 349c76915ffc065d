// A rectangle of the sensor with an apron, cut out on the CPU for one texture: whole mosaics exceed the texture limit of weak
// devices. Raw codes where the shader knows their levels, else photosites that are normalised here.
import { DataTexture, FloatType, NearestFilter, RedFormat, RedIntegerFormat, UnsignedShortType } from 'three'

import type { MosaicData, SensorData } from '../frame/frame.ts'
import type { Rectangle } from '../sensor/rectangle.ts'
import { normaliseTile } from '../sensor/tile.ts'
import { setUniforms, type Uniforms } from './pass.ts'

/** A cut tile on the GPU. */
export interface CodeTile {
  /** Sensor position of the first texel; may be negative. */
  readonly x: number
  readonly y: number
  readonly texture: DataTexture
  readonly bytes: number
}

/** Mirrors about the edge photosite, which keeps the place in a pattern of one or two. */
const mirrored = (index: number, size: number) => {
  const period = Math.max(2 * (size - 1), 1)
  const wrapped = ((index % period) + period) % period
  return Math.min(wrapped, period - wrapped)
}

/** Raw codes of `area` and `apron` around it, also beyond the sensor; `samples` to a pixel. */
function cutCodes(sensor: SensorData, area: Rectangle, apron: number, samples: number): Uint16Array<ArrayBuffer> {
  const [left, width] = [area.x - apron, area.width + 2 * apron]
  const [top, height] = [area.y - apron, area.height + 2 * apron]
  const cut = new Uint16Array(width * height * samples)
  const first = Math.max(left, 0)
  const end = Math.min(left + width, sensor.width)
  const columns = Array.from({ length: width }, (_, column) => left + column)
  const beyond = columns.filter((column) => column < first || column >= end)
  for (let row = 0; row < height; row++) {
    const from = mirrored(top + row, sensor.height) * sensor.width
    const to = row * width - left
    cut.set(sensor.codes.subarray((from + first) * samples, (from + end) * samples), (to + first) * samples)
    for (const column of beyond) {
      const source = (from + mirrored(column, sensor.width)) * samples
      cut.set(sensor.codes.subarray(source, source + samples), (to + column) * samples)
    }
  }
  return cut
}

function place(texture: DataTexture, area: Rectangle, apron: number, bytes: number): CodeTile {
  texture.minFilter = texture.magFilter = NearestFilter
  texture.needsUpdate = true
  return { x: area.x - apron, y: area.y - apron, texture, bytes }
}

/** `area` must lie within the sensor; what the apron shows beyond it continues the pattern. */
export function loadCodes(sensor: SensorData, area: Rectangle, apron: number): CodeTile {
  const samples = sensor.kind === 'linear' ? 3 : 1
  const codes = cutCodes(sensor, area, apron, samples)
  const width = (area.width + 2 * apron) * samples
  const texture = new DataTexture(codes, width, area.height + 2 * apron, RedIntegerFormat, UnsignedShortType)
  texture.internalFormat = 'R16UI'
  return place(texture, area, apron, codes.byteLength)
}

/** The same with normalised photosites. */
export function loadPhotosites(sensor: MosaicData, area: Rectangle, apron: number): CodeTile {
  const { values, width, height } = normaliseTile(sensor, area, apron)
  const texture = new DataTexture(values as Float32Array<ArrayBuffer>, width, height, RedFormat, FloatType)
  return place(texture, area, apron, values.byteLength)
}

/** Says which tile a codes chunk reads. */
export function writeTile(uniforms: Uniforms, { texture, x, y }: CodeTile): void {
  setUniforms(uniforms, { codes: texture, codesOrigin: [x, y] })
}
