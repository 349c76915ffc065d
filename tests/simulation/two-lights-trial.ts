// Two lights tried on drawn scenes in sun and shade: how far the gains that a chain gives lie from what makes the picked grey
// neutral in the light of each cell. Constants were chosen on geometries 0–259 and on draws used up; what is reported comes from others, drawn when
// the method stood. It is the fifth such draw: after the first, from 30,000, sky was told from picked shade, because smooth walls
// counted as sky; after the second, from 40,000, more was asked of it where a frame shows no sky; after the third, from 50,000, the
// frame was no longer measured against what was picked alone, because marks on dark surfaces took bright shade for sun; after the
// fourth, from 60,000, no more was allowed there than the frame’s brightest tenth, because dark sunlit surfaces counted as shade.
import { boxSums } from '../../src/analysis/box-sums.ts'
import { areTwoLights } from '../../src/analysis/two-lights/light-marks.ts'
import { clippingLevel } from '../../src/frame/cell-grid.ts'
import { type FilterNm, recording, reflectance, type Rgb, type SensorName, times } from './camera.ts'
import { gainError, type LightPick, pickShade, probePick } from './picked-shade.ts'
import { add, drawGeometry, type Geometry, height, lightKind, lightsOf, photograph, ratios, width } from './scene.ts'
import { sceneWidth } from './scene-canvas.ts'

export const firstFreshSeed = 70_000

/** Nearly flat materials: what a photographer marks. */
const greys = new Set([
  'concrete_road',
  'limestone',
  'brick_grey',
  'metal_galvanised',
  'asphalt_old',
  'paint_grey_aluminium',
])
/** Cells from an edge of shadow that count as away from it. */
const away = 10
const leastShare = 0.01
/** Shares of the sun above and below which a place is in sun and in shade. */
const sunFrom = 0.98
const shadeTo = 0.02
/** Radii in cells of what the probe reads: what the page begins with (24 photosites), and less where no even patch is as large. */
const probeRadii = [12, 9, 7, 5, 4, 3, 2, 1]

/**
 * Marks as they are known to be of a flat grey as bright as the marked material, or of a much darker one; or as the probe reads them
 * from the material in the noisy photograph, where it calls neither pick worse than fair.
 */
export type PickWay = 'exact' | 'dark' | 'probe'
/** How much darker, in stops: asphalt beside limestone. */
const darkerStops = 1.5

const groups = ['greySun', 'greyShade', 'greyPenumbra', 'otherSun', 'otherShade', 'otherPenumbra'] as const
/** Errors in stops of every cell of a group. */
export type GainErrors = Readonly<Record<(typeof groups)[number], number[]>>

const noErrors = () => Object.fromEntries(groups.map((group) => [group, [] as number[]])) as unknown as GainErrors

/** Means over the 2×2 samples of a cell. */
function cellMean(plane: Float32Array, x: number, y: number): number {
  const i = 2 * y * sceneWidth + 2 * x
  return (plane[i] + plane[i + 1] + plane[i + sceneWidth] + plane[i + sceneWidth + 1]) / 4
}

/** Materials that a geometry holds in sun and in shade. */
function inBothLights({ canvas, lit }: Geometry): string[] {
  const inSun = canvas.materials.map(() => 0)
  const inShade = canvas.materials.map(() => 0)
  for (let i = 0; i < lit.length; i++) {
    if (lit[i] > sunFrom) inSun[canvas.label[i]]++
    else if (lit[i] < shadeTo) inShade[canvas.label[i]]++
  }
  return canvas.materials.filter((_, i) => Math.min(inSun[i], inShade[i]) > leastShare * lit.length)
}

/** Cells that hold one material alone, clear and unclipped: its index, elsewhere −1. */
function pureCells({ canvas }: Geometry, rgba: Float32Array): Int16Array {
  return Int16Array.from({ length: width * height }, (_, i) => {
    const corner = 2 * Math.floor(i / width) * sceneWidth + 2 * (i % width)
    const material = canvas.label[corner]
    const isPure = [1, sceneWidth, sceneWidth + 1].every((by) => canvas.label[corner + by] === material)
    return isPure && canvas.haze[corner] === 0 && rgba[i * 4 + 3] < clippingLevel ? material : -1
  })
}

/** The middle of an even patch of cells, and the radius that a probe can have there; of the best there is where all are small. */
function evenPatch(isInside: (cell: number) => boolean): { place: LightPick['place']; radius: number } {
  const inside = Float32Array.from({ length: width * height }, (_, i) => Number(isInside(i)))
  for (const radius of probeRadii) {
    const around = boxSums(inside, width, height, radius)
    const best = around.reduce((best, sum, i) => (inside[i] * sum > inside[best] * around[best] ? i : best), 0)
    if (around[best] < (2 * radius + 1) ** 2 && radius !== probeRadii.at(-1)) continue
    return { place: { x: ((best % width) + 0.5) / width, y: (Math.floor(best / width) + 0.5) / height }, radius }
  }
  throw new RangeError('No radius to try.')
}

/** Errors on one scene, added to `errors`; false where it does not hold one grey in two lights that can be picked. */
function tryScene(seed: number, sensor: SensorName, filterNm: FilterNm, way: PickWay, errors: GainErrors): boolean {
  if (lightKind(seed) !== 'mixed') return false
  const geometry = drawGeometry(seed)
  const { canvas } = geometry
  const both = inBothLights(geometry)
  const marked = both.find((material) => greys.has(material))
  if (!marked) return false

  const record = recording(sensor, filterNm)
  const lights = lightsOf(geometry)
  const markOf = (rgb: Rgb) => [...ratios(rgb), Math.log2(rgb[0])] as const
  // Much light from grass on the ground can make both lights nearly one: then no second light is offered.
  const [ofSun, ofAmbient] = [record(lights.sun), record(lights.ambient)]
  if (!areTwoLights(markOf(add(ofSun, ofAmbient)), markOf(ofAmbient))) return false

  const photo = photograph(geometry, record, seed)
  const lit = Float32Array.from({ length: width * height }, (_, i) =>
    cellMean(geometry.lit, i % width, Math.floor(i / width)),
  )
  const pure = pureCells(geometry, photo.overview.rgba)
  const isMarked = (i: number) => canvas.materials[pure[i]] === marked
  const inSun = evenPatch((i) => isMarked(i) && lit[i] > sunFrom)
  const inShade = evenPatch((i) => isMarked(i) && lit[i] < shadeTo)

  const ofMarked = reflectance(marked)
  /** What is picked: a flat grey as bright as the marked material, or the material itself. */
  const picked = (light: readonly number[]): Rgb => {
    const rgb = record(way === 'probe' ? times(light, ofMarked) : light)
    const level = photo.gain * (way === 'probe' ? 1 : levelOf(marked) * 2 ** (way === 'dark' ? -darkerStops : 0))
    return [rgb[0] * level, rgb[1] * level, rgb[2] * level]
  }
  const [sun, ambient] = [picked(lights.sun), picked(lights.ambient)]
  const pickedIn = (sunShare: number, skyShare: number): Rgb => [
    sun[0] * sunShare + ambient[0] * skyShare,
    sun[1] * sunShare + ambient[1] * skyShare,
    sun[2] * sunShare + ambient[2] * skyShare,
  ]
  const pick = (rgb: Rgb, { place, radius }: typeof inSun): LightPick | null =>
    way === 'probe' ? probePick(photo, place, radius) : { rgb, place }
  const [sunPick, shadePick] = [pick(add(sun, ambient), inSun), pick(ambient, inShade)]
  if (!sunPick || !shadePick) return false
  const shade = pickShade(photo, sunPick, shadePick)

  const penumbra = lit.map((share) => Number(share >= shadeTo && share <= sunFrom))
  const nearEdge = boxSums(penumbra, width, height, away)
  for (let i = 0; i < penumbra.length; i++) {
    const material = canvas.materials[pure[i]]
    if (!both.includes(material) || (!penumbra[i] && nearEdge[i] > 0.5)) continue
    const [x, y] = [i % width, Math.floor(i / width)]
    const light = penumbra[i] ? 'Penumbra' : lit[i] > 0.5 ? 'Sun' : 'Shade'
    const truth = pickedIn(cellMean(canvas.sun, x, y), cellMean(canvas.sky, x, y))
    errors[`${greys.has(material) ? 'grey' : 'other'}${light}`].push(gainError(shade, i, truth))
  }
  return true
}

/** How bright a material is beside the perfect diffuser, behind infrared filters. */
const levelOf = (material: string) => reflectance(material)[(750 - 350) / 5]

/** The first `scenes` geometries from a seed on that hold a grey in sun and in shade which can be picked, photographed by one sensor. */
export function tryTwoLights(
  first: number,
  scenes: number,
  sensor: SensorName,
  filterNm: FilterNm,
  way: PickWay,
): GainErrors {
  const errors = noErrors()
  for (let seed = first, done = 0; done < scenes; seed++) if (tryScene(seed, sensor, filterNm, way, errors)) done++
  return errors
}

export const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length
export const shareBelow = (values: readonly number[], limit: number) =>
  values.filter((value) => value <= limit).length / values.length
