// Two lights tried on drawn scenes in sun and shade: how far the gains that the mask gives lie from what would make flat grey
// neutral in the light of each cell.
import { shadeMaskOf } from '../support/shade-mask-of.ts'
import { boxSums } from '../../src/analysis/box-sums.ts'
import { light, mix, recording, reflectance, type FilterNm, type SensorName, times, type Rgb } from './camera.ts'
import { add, drawGeometry, height, lightKind, lightsOf, photograph, ratios, width } from './scene.ts'
import { sceneWidth } from './scene-canvas.ts'

export const firstFreshSeed = 3000

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

export interface GainErrors {
  /** Error in stops of every cell of the kind. */
  readonly greySun: number[]
  readonly greyShade: number[]
  readonly otherSun: number[]
  readonly otherShade: number[]
  readonly penumbra: number[]
}

const noErrors = (): GainErrors => ({ greySun: [], greyShade: [], otherSun: [], otherShade: [], penumbra: [] })

/** Means over the 2×2 samples of a cell. */
function cellMean(plane: Float32Array, x: number, y: number): number {
  const i = 2 * y * sceneWidth + 2 * x
  return (plane[i] + plane[i + 1] + plane[i + sceneWidth] + plane[i + sceneWidth + 1]) / 4
}

/** Errors on one scene, added to `errors`; false where it does not hold one material in both lights. */
function tryScene(seed: number, sensor: SensorName, filterNm: FilterNm, errors: GainErrors): boolean {
  if (lightKind(seed) !== 'mixed') return false
  const geometry = drawGeometry(seed)
  const { canvas, lit } = geometry
  const inSun = new Map<string, number>()
  const inShade = new Map<string, number>()
  for (let i = 0; i < lit.length; i++) {
    const seen = lit[i] > 0.98 ? inSun : lit[i] < 0.02 ? inShade : null
    const material = canvas.materials[canvas.label[i]]
    seen?.set(material, (seen.get(material) ?? 0) + 1)
  }
  const both = canvas.materials.filter(
    (material) => Math.min(inSun.get(material) ?? 0, inShade.get(material) ?? 0) > leastShare * lit.length,
  )
  const marked = both.find((material) => greys.has(material))
  if (!marked) return false

  const record = recording(sensor, filterNm)
  const { overview, gain } = photograph(geometry, record, seed)
  const lights = lightsOf(geometry)
  const [sun, ambient] = [record(lights.sun), record(lights.ambient)]
  const greyIn = (sunShare: number, skyShare: number): Rgb =>
    add(
      sun.map((value) => value * sunShare) as unknown as Rgb,
      ambient.map((value) => value * skyShare) as unknown as Rgb,
    )
  const level = Math.log2(gain * levelOf(marked))
  const markOf = (rgb: Rgb) => [...ratios(rgb), Math.log2(rgb[0]) + level] as [number, number, number]
  const [inLight, inDark] = [markOf(greyIn(1, 1)), markOf(greyIn(0, 1))]
  const mask = shadeMaskOf({ overview, sun: inLight, shade: inDark })
  if (!mask) return false

  const penumbra = new Float32Array(width * height)
  for (let i = 0; i < penumbra.length; i++) {
    const share = cellMean(lit, i % width, Math.floor(i / width))
    penumbra[i] = share > 0.02 && share < 0.98 ? 1 : 0
  }
  const nearEdge = boxSums(penumbra, width, height, away)
  for (let i = 0; i < penumbra.length; i++) {
    const [x, y] = [i % width, Math.floor(i / width)]
    const corner = 2 * y * sceneWidth + 2 * x
    const material = canvas.materials[canvas.label[corner]]
    const pureCell = [1, sceneWidth, sceneWidth + 1].every((by) => canvas.label[corner + by] === canvas.label[corner])
    if (!pureCell || !both.includes(material) || canvas.haze[corner] > 0 || overview.rgba[i * 4 + 3] >= 0.97) continue
    const truth = ratios(greyIn(cellMean(canvas.sun, x, y), cellMean(canvas.sky, x, y)))
    const shade = mask.plane[i]
    const error = Math.hypot(
      inLight[0] + shade * (inDark[0] - inLight[0]) - truth[0],
      inLight[1] + shade * (inDark[1] - inLight[1]) - truth[1],
    )
    const grey = greys.has(material)
    if (penumbra[i]) {
      if (grey) errors.penumbra.push(error)
    } else if (nearEdge[i] < 0.5) {
      const sunny = cellMean(lit, x, y) > 0.5
      errors[`${grey ? 'grey' : 'other'}${sunny ? 'Sun' : 'Shade'}` as keyof GainErrors].push(error)
    }
  }
  return true
}

/** How bright a material is beside the perfect diffuser, behind infrared filters. */
const levelOf = (material: string) => reflectance(material)[(750 - 350) / 5]

/** The first `scenes` geometries from a seed on that hold a grey in sun and in shade, photographed by one sensor. */
export function tryTwoLights(first: number, scenes: number, sensor: SensorName, filterNm: FilterNm): GainErrors {
  const errors = noErrors()
  for (let seed = first, done = 0; done < scenes; seed++) if (tryScene(seed, sensor, filterNm, errors)) done++
  return errors
}

export const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length
export const shareBelow = (values: readonly number[], limit: number) =>
  values.filter((value) => value <= limit).length / values.length

/** Columns of sun and shade with a hard edge between, over bands of four materials; noise-free. */
export function bandsUnderTwoLights(sensor: SensorName, filterNm: FilterNm) {
  const record = recording(sensor, filterNm)
  const sun = light('sun_direct_AM15')
  const ambient = mix([1, light('sky_diffuse_clear')], [0.05, times(sun, reflectance('concrete_road'))])
  const names = ['concrete_road', 'grass_green_b', 'limestone', 'sand_dry_b']
  const colours = names.map((name) => {
    const [lit, dark] = [mix([1, sun], [1, ambient]), ambient].map((l) => record(times(l, reflectance(name))))
    return { lit, dark }
  })
  const rgba = new Float32Array(width * height * 4)
  for (let i = 0; i < width * height; i++) {
    const { lit, dark } = colours[Math.floor((Math.floor(i / width) / height) * names.length)]
    const rgb = i % width < width / 2 ? lit : dark
    rgba.set([...rgb, Math.max(...rgb)], i * 4)
  }
  const markOf = (rgb: Rgb) => [...ratios(rgb), Math.log2(rgb[0])] as [number, number, number]
  const [inLight, inDark] = [markOf(colours[0].lit), markOf(colours[0].dark)]
  const mask = shadeMaskOf({ overview: { width, height, rgba, scale: 2 }, sun: inLight, shade: inDark })!
  return { mask, distance: Math.hypot(inDark[0] - inLight[0], inDark[1] - inLight[1]) }
}
