// What turns a sensor's raw codes into `cameraRgb` in a shader: the text for its kind, and the uniforms that say what codes mean.
import { DataTexture, NearestFilter, RedIntegerFormat, UnsignedShortType } from 'three'

import bayer from '../../shaders/mosaic-bayer.glsl?raw'
import linear from '../../shaders/mosaic-linear.glsl?raw'
import single from '../../shaders/mosaic-single.glsl?raw'
import type { LevelTable, SensorData } from '../frame/frame.ts'
import type { CodeTile } from './code-tile.ts'
import { setUniforms, type Uniforms } from './pass.ts'

export interface CodeSource {
  /** Equal keys share their shader text. */
  readonly key: string
  readonly text: string
  /** Whether gains change what interpolation gives. */
  readonly mixesChannels: boolean
  /** Says which tile is read, what its codes mean, and at which gains its channels are equal. */
  write(uniforms: Uniforms, tile: LoadedTile, gains: readonly [number, number, number]): void
}

/** A tile of codes on the GPU. */
export interface LoadedTile {
  readonly x: number
  readonly y: number
  readonly texture: DataTexture
}

export function loadTile({ x, y, width, height, codes, samples }: CodeTile): LoadedTile {
  const texture = new DataTexture(codes, width * samples, height, RedIntegerFormat, UnsignedShortType)
  texture.internalFormat = 'R16UI'
  texture.minFilter = texture.magFilter = NearestFilter
  texture.needsUpdate = true
  return { x, y, texture }
}

/** Levels at the four places of a 2×2 pattern, left to right, top to bottom. */
function levelsByPlace({ columns, rows, codes }: LevelTable): number[] {
  return [0, 1, 2, 3].map((place) => codes[((place >> 1) % rows) * columns + ((place & 1) % columns)])
}

const unitsOf = (white: number, black: readonly number[]) => black.map((level) => 1 / (white - level))

/** The source of a sensor. */
export function codeSource(sensor: SensorData): CodeSource {
  const [kind, text] =
    sensor.kind === 'linear' ? ['linear', linear] : sensor.cfa.columns === 1 ? ['single', single] : ['bayer', bayer]
  const black = sensor.kind === 'linear' ? sensor.black : levelsByPlace(sensor.black)
  const red = sensor.kind === 'linear' ? 0 : sensor.cfa.colours.indexOf(0)
  return {
    key: kind,
    text,
    mixesChannels: kind === 'bayer',
    write(uniforms, tile, gains) {
      setUniforms(uniforms, {
        codes: tile.texture,
        codesOrigin: [tile.x, tile.y],
        black,
        unit: unitsOf(sensor.white, black),
        redPlace: [red & 1, red >> 1],
        gains,
      })
    },
  }
}
