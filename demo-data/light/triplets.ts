// Camera triplets: what a sensor behind a filter records of every material under every light. Linear camera RGB in which
// the white diffuser under full sun and sky has 1 in its largest channel. Spectra meet only here: pixels only mix triplets.
import {
  type FilterName,
  type SensorName,
  illuminant,
  reflectance,
  type ReflectanceName,
  sensitivities,
  transmission,
  wavelengthNm,
} from '../spectra.ts'
import { type MaterialName, type Mix, materialMixes, materialNames } from './materials.ts'

/** One material: `t` holds R, G, B under direct sun (0–2), clear skylight (3–5), overcast (6–8), light through a canopy (9–11). */
export interface Material {
  readonly id: number
  readonly name: MaterialName
  readonly t: Float64Array
}

export interface Palette {
  readonly sensor: SensorName
  readonly filter: FilterName
  /** Sunlight-weighted mean wavelength per channel in nm; sets how far each channel sees through haze. */
  readonly effectiveNm: readonly [number, number, number]
  of(name: MaterialName): Material
}

/** Share of global light that a leaf canopy scatters and transmits downwards; own estimate, no source. */
const canopyGain = 1.9

function mixedReflectance(mix: Mix): Float64Array {
  const sum = new Float64Array(151)
  for (const [name, weight] of Object.entries(mix) as [ReflectanceName, number][]) {
    const curve = reflectance(name)
    for (let i = 0; i < sum.length; i++) sum[i] += weight * curve[i]
  }
  return sum
}

/** Builds the triplets for one sensor, filter and sun. `lowSun` replaces the direct sun by one at about 11° elevation. */
export function createPalette(sensor: SensorName, filter: FilterName, lowSun = false): Palette {
  const glass = transmission(filter)
  // Sensitivities count electrons per photon and light is given as energy: a photon carries energy in proportion to 1 / λ.
  const channels = sensitivities(sensor).map((s) => s.map((v, i) => v * glass[i] * wavelengthNm(i)))
  const global = illuminant('sun_sky_global_AM15')
  const leaf = reflectance('leaf_deciduous_c')
  const sun = illuminant(lowSun ? 'sun_direct_AM5_model' : 'sun_direct_AM15')
  const lights = [
    sun,
    illuminant('sky_diffuse_clear'),
    illuminant('overcast_model'),
    global.map((v, i) => v * leaf[i] * canopyGain),
  ]
  const dot = (light: readonly number[], channel: readonly number[], reflected?: Float64Array) => {
    let sum = 0
    for (let i = 0; i < light.length; i++) sum += light[i] * channel[i] * (reflected ? reflected[i] : 1)
    return sum
  }
  const norm = 1 / Math.max(...channels.map((c) => dot(global, c)))
  const materials = new Map(
    materialNames.map((name, id) => {
      const reflected = mixedReflectance(materialMixes[name])
      const t = Float64Array.from(lights.flatMap((light) => channels.map((c) => norm * dot(light, c, reflected))))
      return [name, { id, name, t }] as const
    }),
  )
  const meanNm = (c: readonly number[]) =>
    dot(
      global.map((v, i) => v * wavelengthNm(i)),
      c,
    ) / dot(global, c)
  return {
    sensor,
    filter,
    effectiveNm: [meanNm(channels[0]), meanNm(channels[1]), meanNm(channels[2])],
    of: (name) => materials.get(name)!,
  }
}
