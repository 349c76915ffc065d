// What a frame's places are made of, as far as colour behind a filter tells it: log2 of red to blue of `cameraRgb` against the
// frame's grey, in stops. Foliage lies far below 0, sky above it. Smoothed along edges, because single pixels are mostly noise there.
// What is redder than grey counts only where it can be sky, and as much as sky does with the sensor that parts colours most.
import type { NoiseModel, Overview } from '../frame/frame.ts'
import { clippingLevel } from '../frame/cell-grid.ts'
import { boxSums } from './box-sums.ts'
import { localTexture } from './candidates/local-texture.ts'
import { skyPlaces } from './sky-places.ts'
import type { LightMark } from './two-lights/light-marks.ts'
import { guidedFilter } from './two-lights/guided-filter.ts'

/** Radius in overview pixels of the means that quieten noise, and of the windows that follow edges. */
const meanRadius = 1
const edgeRadius = 3
/** What it takes for an edge of log2 red, in stops². */
const edgeEpsilon = 0.02
/** Nothing known is redder or bluer than this against grey, in stops; what noise makes of dark places is held here. */
const furthestStops = 3
/** Radius in overview pixels of the windows that texture is told in. */
const textureRadius = 2

export interface MaterialSource {
  readonly overview: Overview
  readonly noise: NoiseModel
  /** Photosites of red that one overview pixel averages. */
  readonly photosites: number
}

export interface MaterialPlane {
  readonly width: number
  readonly height: number
  /** Row by row, in stops against grey; 0 where light is clipped. */
  readonly data: Float32Array
}

const hold = (value: number) => Math.min(Math.max(value, -furthestStops), furthestStops)

function textureOf({ overview, noise, photosites }: MaterialSource, clipped: Uint8Array): Float32Array {
  const { width, height, rgba } = overview
  const unsmoothed = new Float32Array(clipped.length * 3)
  for (let i = 0; i < clipped.length; i++) unsmoothed.set(rgba.subarray(i * 4, i * 4 + 3), i * 3)
  const unclipped = clipped.map((flag) => 1 - flag)
  return localTexture({ width, height, unsmoothed, unclipped, radius: textureRadius, photosites }, noise)
}

/** Stops against grey smoothed along edges, and texture in stops, of an overview whose grey has log2 R/B of `greyStops`. */
function stopsAgainst(source: MaterialSource, greyStops: number) {
  const { width, height, rgba } = source.overview
  const red = new Float32Array(width * height)
  const blue = new Float32Array(width * height)
  const clipped = new Uint8Array(width * height)
  for (let i = 0; i < red.length; i++) {
    clipped[i] = rgba[i * 4 + 3] >= clippingLevel ? 1 : 0
    red[i] = clipped[i] ? 0 : rgba[i * 4]
    blue[i] = clipped[i] ? 0 : rgba[i * 4 + 2]
  }
  const redSums = boxSums(red, width, height, meanRadius)
  const blueSums = boxSums(blue, width, height, meanRadius)
  const ratio = redSums.map((sum, i) => {
    const stops = clipped[i] ? 0 : Math.log2(Math.max(sum, 0) / Math.max(blueSums[i], 0)) - greyStops
    return Number.isNaN(stops) ? 0 : hold(stops)
  })
  const floor = 2 ** -14
  const guide = red.map((value, i) => Math.log2(Math.max(clipped[i] ? 1 : value, floor)))
  const stops = guidedFilter(ratio, guide, width, height, edgeRadius, edgeEpsilon)
  return { stops, texture: textureOf(source, clipped), log2Red: guide }
}

/** The plane of an overview whose grey has log2 R/B of `greyStops`. */
export function materialPlane(source: MaterialSource, greyStops: number): MaterialPlane {
  const { width, height } = source.overview
  const { stops, texture } = stopsAgainst(source, greyStops)
  const { share, lift } = skyPlaces(stops, texture, width, height)
  return { width, height, data: stops.map((value, i) => (value > 0 ? value * lift * share[i] : value)) }
}

/**
 * How far each overview pixel can be sky, 0…1, row by row, where `shade` was picked. Sky lies where shade does, and beyond: redder than
 * grey behind a filter, where `isRed`, and bluer without one.
 */
export function skyShare(
  source: MaterialSource,
  greyStops: number,
  isRed: boolean,
  [u, v, shadeLevel]: LightMark,
): Float32Array {
  const { width, height } = source.overview
  const { stops, texture, log2Red } = stopsAgainst(source, greyStops)
  const redder = isRed ? stops : stops.map((value) => -value)
  const shadeStops = isRed ? u - v - greyStops : greyStops - (u - v)
  const brighter = log2Red.map((level) => level - shadeLevel)
  return skyPlaces(redder, texture, width, height, { stops: shadeStops, brighter }).share
}
