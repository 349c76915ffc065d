// What turns a sensor's codes into `cameraRgb` in a shader: the text for its kind, the tiles it reads, and the uniforms that
// say what their codes mean.
import codesFloat from '../../shaders/codes-float.glsl?raw'
import codesInteger from '../../shaders/codes-integer.glsl?raw'
import bayer from '../../shaders/demosaic-bayer.glsl?raw'
import linear from '../../shaders/demosaic-linear.glsl?raw'
import single from '../../shaders/demosaic-single.glsl?raw'
import type { LinearData, MosaicData, SensorData } from '../frame/frame.ts'
import { photositeTable } from '../frame/photosite-table.ts'
import { isBayer } from '../sensor/cfa.ts'
import { bayerReach } from '../sensor/demosaic-bayer.ts'
import type { Rectangle } from '../sensor/rectangle.ts'
import { anyArraySource } from './any-array-source.ts'
import { type CodeTile, loadCodes, loadPhotosites, writeTile } from './code-tile.ts'
import type { RawShaderMaterial } from 'three'
import { type Pass, setUniforms, type Uniforms } from './pass.ts'

export interface CodeSource {
  /** Equal keys share their shader text. */
  readonly key: string
  readonly text: readonly string[]
  /** What `write` draws with, if anything. */
  readonly steps: readonly RawShaderMaterial[]
  /** Whether gains change what interpolation gives. */
  readonly mixesChannels: boolean
  /** A tile that `margin` pixels around `area` can be demosaiced from. */
  load(area: Rectangle, margin: number): CodeTile
  /** Says which tile is read, what its codes mean, and at which gains its channels are equal. */
  write(uniforms: Uniforms, tile: CodeTile, gains: readonly [number, number, number]): void
  dispose(): void
}

const nothing = () => {}

function linearSource(sensor: LinearData): CodeSource {
  const levels = { black: sensor.black, unit: sensor.black.map((code) => 1 / (sensor.white - code)) }
  return {
    key: 'linear',
    text: [codesInteger, linear],
    steps: [],
    mixesChannels: false,
    load: (area, margin) => loadCodes(sensor, area, margin),
    write(uniforms, tile) {
      writeTile(uniforms, tile)
      setUniforms(uniforms, levels)
    },
    dispose: nothing,
  }
}

/** Black and 1/(white − black) at the four places of a 2×2 pattern, or null when a larger one is needed. */
function levelsByPlace(sensor: MosaicData) {
  const { columns, rows, black, scale } = photositeTable(sensor)
  if (columns > 2 || rows > 2) return null
  const places = [0, 1, 2, 3].map((place) => ((place >> 1) % rows) * columns + ((place & 1) % columns))
  return { black: places.map((place) => black[place]), unit: places.map((place) => scale[place]) }
}

function mosaicSource(sensor: MosaicData): CodeSource {
  const levels = levelsByPlace(sensor)
  const red = sensor.cfa.colours.indexOf(0)
  const oneChannel = red < 0
  const reach = oneChannel ? 0 : bayerReach
  const load = levels ? loadCodes : loadPhotosites
  const meaning = levels ?? { black: [0, 0, 0, 0], unit: [1, 1, 1, 1] }
  return {
    key: `${oneChannel ? 'single' : 'bayer'} ${levels ? 'codes' : 'photosites'}`,
    text: [levels ? codesInteger : codesFloat, oneChannel ? single : bayer],
    steps: [],
    mixesChannels: !oneChannel,
    load: (area, margin) => load(sensor, area, margin + reach),
    write(uniforms, tile, gains) {
      writeTile(uniforms, tile)
      setUniforms(uniforms, { ...meaning, redPlace: [red & 1, red >> 1], gains })
    },
    dispose: nothing,
  }
}

/** The source of a sensor; `float32` when the context renders to 32-bit float. */
export function codeSource(sensor: SensorData, pass: Pass, float32: boolean): CodeSource {
  if (sensor.kind === 'linear') return linearSource(sensor)
  const { cfa } = sensor
  if (isBayer(cfa) || cfa.colours.every((colour) => colour === 1)) return mosaicSource(sensor)
  return anyArraySource(sensor, pass, float32)
}
