// One drawn scene under one light, and its photograph by one sensor behind one filter: cells with noise beside the truth
// that a judgement is measured against.
import { makeCellGrid, type CellGrid } from '../../src/frame/cell-grid.ts'
import type { NoiseModel, Overview } from '../../src/frame/frame.ts'
import { normalNumbers } from '../support/synthetic-sensor.ts'
import { light, mix, type Rgb, type Record3, reflectance, type Spectrum, times } from './camera.ts'
import { layouts } from './layouts.ts'
import { SceneCanvas, sceneHeight, sceneWidth } from './scene-canvas.ts'

const lightKinds = ['sun', 'mixed', 'low sun', 'overcast', 'open shade'] as const
export type LightKind = (typeof lightKinds)[number]

export const width = sceneWidth / 2
export const height = sceneHeight / 2

export interface Geometry {
  readonly canvas: SceneCanvas
  readonly layout: string
  readonly kind: LightKind
  /** Share of saturation that the 99th percentile reaches: beyond 1 the brightest parts clip. */
  readonly exposure: number
  readonly noise: NoiseModel
  /** Share of sunlight that comes back from the ground, and the ground's material. */
  readonly bounce: number
  readonly ground: string
  /** Share of the sun that cast shadows leave, 0…1. */
  readonly lit: Float32Array
  /** Which light each sample is in. */
  readonly reached: Uint8Array
  /** Share of the frame under green leaves. */
  readonly foliage: number
}

/** Kinds of `reached`. */
const passage = 0
const inFullSun = 1
const inFullShade = 2

const layoutNames = Object.keys(layouts)

/** The light of a seed's geometry. */
export function lightKind(seed: number): LightKind {
  return lightKinds[Math.floor(seed / layoutNames.length + seed) % lightKinds.length]
}

/** The geometry of a seed: layout and light take turns, everything else is drawn. */
export function drawGeometry(seed: number): Geometry {
  const canvas = new SceneCanvas(seed * 7919 + 13)
  const layout = layoutNames[seed % layoutNames.length]
  const kind = lightKind(seed)
  layouts[layout](canvas)
  const lit = shade(canvas, kind)
  const fullScaleElectrons = layout === 'darkWood' ? canvas.between(3000, 8000) : canvas.between(8000, 50000)
  return {
    canvas,
    layout,
    kind,
    exposure: canvas.between(0.55, 1.5) * (layout === 'darkWood' ? 0.5 : 1),
    noise: { fullScaleElectrons, readNoiseElectrons: 3 },
    bounce: canvas.between(0.02, 0.12),
    lit,
    reached: lightReached(canvas),
    foliage: foliageOf(canvas),
    ground: canvas.oneOf(['grass_green_b', 'concrete_road', 'sand_dry_b', 'asphalt_old']),
  }
}

function lightReached({ sun, sky }: SceneCanvas): Uint8Array {
  const reached = new Uint8Array(sun.length)
  for (let i = 0; i < sun.length; i++)
    reached[i] = sun[i] > 0.6 * sky[i] ? inFullSun : sun[i] < 0.02 * sky[i] ? inFullShade : passage
  return reached
}

function foliageOf({ materials, label }: SceneCanvas): number {
  const green = materials.map((material) => /grass_green|leaf_deciduous|conifer/.test(material))
  let samples = 0
  for (let i = 0; i < label.length; i++) if (green[label[i]]) samples++
  return samples / label.length
}

/** Cast shadows take the sun away with soft edges; sky and clouds keep their own light. */
function shade(canvas: SceneCanvas, kind: LightKind): Float32Array {
  const shares = new Float32Array(canvas.label.length).fill(1)
  const limit = { sun: 1.4, mixed: 0, 'low sun': 0.6, overcast: 9, 'open shade': -9 }[kind]
  const shape = canvas.field(120, 3)
  const soft = canvas.between(0.02, 0.12)
  for (let i = 0; i < canvas.label.length; i++) {
    const material = canvas.materials[canvas.label[i]]
    if (material === 'sky' || material === 'cloud_sunlit') continue
    const lit = (limit - shape(i % sceneWidth, Math.floor(i / sceneWidth) * 1.6)) / soft
    shares[i] = Math.min(Math.max(lit + 0.5, 0), 1)
    canvas.sun[i] *= shares[i]
  }
  return shares
}

export interface Photograph {
  readonly overview: Overview
  readonly grid: CellGrid
  readonly noise: NoiseModel
  /** (log2 R/G, log2 B/G) of spectrally flat grey in each light present. */
  readonly greys: readonly (readonly [number, number])[]
  /** Distance from the nearest grey of the material that comes closest, in stops. */
  readonly nearestMaterial: number
  /** Factor of the exposure on the recording of a diffuser in full light. */
  readonly gain: number
}

const surface = (material: string): Spectrum =>
  material === 'bark'
    ? mix([0.3, reflectance('leaf_oak_dried')], [0.65, reflectance('asphalt_old')])
    : reflectance(material)

export const ratios = ([r, g, b]: Rgb): [number, number] => [Math.log2(r / g), Math.log2(b / g)]

export const add = (a: Rgb, b: Rgb): Rgb => [a[0] + b[0], a[1] + b[1], a[2] + b[2]]

/** The lights of a geometry as spectra: on what the sun reaches, and what reaches shade too. */
export function lightsOf({ kind, bounce, ground }: Geometry) {
  const none = light('overcast_model').map(() => 0)
  if (kind === 'overcast') {
    const cover = light('overcast_model')
    return { sun: cover, ambient: none, deep: mix([0.35, cover]), low: mix([0.6, cover]), cloud: cover }
  }
  const sun = light(kind === 'low sun' ? 'sun_direct_AM5_model' : 'sun_direct_AM15')
  const skylight = light('sky_diffuse_clear')
  const ambient = mix([1, skylight], [bounce, times(sun, reflectance(ground))])
  // Radiance of sky beside irradiance of diffusers: times π; the deep sky of the table is too dark, hence times 2.
  const deep = mix([2 * Math.PI, light('sky_radiance_deep')])
  const low = mix([Math.PI, light('sky_radiance_hazy')])
  return { sun, ambient, deep, low, cloud: mix([1, sun], [1, skylight]) }
}

/** Photographs a geometry; the same seed gives the same noise. */
export function photograph(geometry: Geometry, record: Record3, seed: number): Photograph {
  const { canvas, noise } = geometry
  const { materials, label, sun, sky, haze } = canvas
  const lights = lightsOf(geometry)
  const lit: Rgb[] = []
  const shaded: Rgb[] = []
  for (const material of materials) {
    const water = material.startsWith('water')
    if (material === 'sky') {
      lit.push(record(lights.deep))
      shaded.push(record(lights.low))
    } else if (material === 'cloud_sunlit') {
      lit.push(record(times(lights.cloud, surface(material))))
      shaded.push([0, 0, 0])
    } else {
      lit.push(record(times(lights.sun, surface(material))))
      const own = record(times(lights.ambient, surface(material)))
      shaded.push(water ? add(own, record(lights.low.map((value) => value * 0.12))) : own)
    }
  }
  const air = record(lights.low)

  const [ofSun, ofSky] = [Float64Array.from(lit.flat()), Float64Array.from(shaded.flat())]
  const fine = new Float32Array(label.length * 3)
  const [airRed, airGreen, airBlue] = air
  for (let i = 0, to = 0; i < label.length; i++, to += 3) {
    const from = label[i] * 3
    const [inSun, inSky, veil, clear] = [sun[i], sky[i], haze[i], 1 - haze[i]]
    fine[to] = (inSun * ofSun[from] + inSky * ofSky[from]) * clear + airRed * veil * 0.7
    fine[to + 1] = (inSun * ofSun[from + 1] + inSky * ofSky[from + 1]) * clear + airGreen * veil * 0.7
    fine[to + 2] = (inSun * ofSun[from + 2] + inSky * ofSky[from + 2]) * clear + airBlue * veil * 0.7
  }
  const levels = Float32Array.from({ length: 4000 }, (_, n) => largest(fine, (n * 59_999) % label.length)).sort()
  const gain = geometry.exposure / levels[Math.floor(levels.length * 0.99)]

  const overview = expose(fine, gain, noise, seed)
  const greys = greysOf(geometry, record)
  return {
    overview,
    grid: makeCellGrid(overview, noise, 1),
    noise,
    gain,
    greys,
    nearestMaterial: nearestMaterial(geometry, lit, shaded, greys, fine, gain),
  }
}

/** The largest channel of a sample. */
const largest = (fine: Float32Array, i: number) => Math.max(fine[i * 3], fine[i * 3 + 1], fine[i * 3 + 2])

function expose(fine: Float32Array, gain: number, noise: NoiseModel, seed: number): Overview {
  const normal = normalNumbers(seed)
  const { fullScaleElectrons: full, readNoiseElectrons: read } = noise
  const rgba = new Float32Array(width * height * 4)
  for (let y = 0, cell = 0; y < height; y++) {
    for (let x = 0; x < width; x++, cell++) {
      const corner = (2 * y * sceneWidth + 2 * x) * 3
      let most = 0
      for (let c = 0; c < 3; c++) {
        const first = fine[corner + c] * gain
        const second = fine[corner + c + 3] * gain
        const third = fine[corner + c + sceneWidth * 3] * gain
        const fourth = fine[corner + c + sceneWidth * 3 + 3] * gain
        const mean = first / 4 + second / 4 + third / 4 + fourth / 4
        most = Math.max(most, first, second, third, fourth)
        const noisy = mean + (normal() * Math.sqrt((mean * full + read * read) / (c === 1 ? 2 : 1))) / full
        rgba[cell * 4 + c] = Math.min(noisy, 1)
        if (noisy > most) most = noisy
      }
      rgba[cell * 4 + 3] = Math.min(most, 1)
    }
  }
  return { width, height, rgba, scale: 2 }
}

/** Flat grey where the sun reaches and where it does not, as far as each is in the frame. */
function greysOf(geometry: Geometry, record: Record3): [number, number][] {
  const { canvas, kind, reached } = geometry
  const lights = lightsOf(geometry)
  const inSun = ratios(add(record(lights.sun), record(lights.ambient)))
  if (kind === 'overcast') return [inSun]
  let sunny = 0
  let shady = 0
  const sky = canvas.materials.indexOf('sky')
  for (let i = 0; i < canvas.label.length; i++) {
    if (canvas.label[i] === sky) continue
    if (reached[i] === inFullSun) sunny++
    else if (reached[i] === inFullShade) shady++
  }
  const least = 0.02 * canvas.label.length
  const inShade = ratios(record(lights.ambient))
  return [...(sunny > least ? [inSun] : []), ...(shady > least ? [inShade] : [])]
}

/** Least share of the frame, unclipped, that makes a material present. */
const leastShare = 0.003

/** Distance of the material that comes nearest to a grey in its own light. */
function nearestMaterial(
  { canvas, reached }: Geometry,
  lit: readonly Rgb[],
  shaded: readonly Rgb[],
  greys: readonly (readonly [number, number])[],
  fine: Float32Array,
  gain: number,
): number {
  const { materials, label, haze } = canvas
  const inSun = materials.map(() => 0)
  const inShade = materials.map(() => 0)
  for (let i = 0; i < label.length; i++) {
    if (reached[i] === passage || haze[i] > 0.05 || largest(fine, i) * gain > 0.9) continue
    if (reached[i] === inFullSun) inSun[label[i]]++
    else inShade[label[i]]++
  }
  const distance = (rgb: Rgb) => {
    const [u, v] = ratios(rgb)
    return Math.min(...greys.map((grey) => Math.hypot(u - grey[0], v - grey[1])))
  }
  let nearest = Infinity
  materials.forEach((material, i) => {
    if (material === 'sky') return
    const least = leastShare * label.length
    if (inSun[i] > least) nearest = Math.min(nearest, distance(add(lit[i], shaded[i])))
    if (inShade[i] > least) nearest = Math.min(nearest, distance(shaded[i]))
  })
  return nearest
}
