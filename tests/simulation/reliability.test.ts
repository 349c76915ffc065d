// The word “good” on fresh picks: materials in sun or shade behind every filter, with another material under part of the
// sample, texture, noise of all strengths and clipping. How far off a pick is, is known because it was drawn.
import { describe, expect, it } from 'vitest'
import { samplePatch } from '../../src/frame/sample-patch.ts'
import type { CfaColour } from '../../src/frame/frame.ts'
import { makeMosaic, randomNumbers } from '../support/synthetic-sensor.ts'
import { filters, light, recording, reflectance, type Rgb, spectraAreHere, times } from './camera.ts'
import { ratios } from './scene.ts'
import { valueNoise } from './value-noise.ts'

const materials = [
  'concrete_road',
  'limestone',
  'asphalt_old',
  'brick_red_a',
  'sand_dry_b',
  'grass_green_b',
  'conifer_b',
  'wood_pine_new',
  'snow_melting',
]
const lights = ['sun_direct_AM15', 'sky_diffuse_clear', 'overcast_model']
const picks = 2000
const firstSeed = 5000
const size = 72

interface Pick {
  readonly reliability: string
  readonly error: number
}

/** One pick at the middle of a drawn patch, and its distance from the colour of the material there. */
function drawPick(seed: number): Pick | null {
  const random = randomNumbers(seed)
  const oneOf = <T>(list: readonly T[]) => list[Math.floor(random() * list.length)]
  const record = recording(oneOf(['A', 'B'] as const), oneOf(filters))
  const lit = light(oneOf(lights))
  const level = 0.02 * 2 ** (random() * 6.2)
  const seen = (material: string): Rgb => {
    const rgb = record(times(lit, reflectance(material)))
    return rgb.map((value) => value * scale) as unknown as Rgb
  }
  let scale = 1
  const main = oneOf(materials)
  scale = level / Math.max(...seen(main))
  const colour = seen(main)
  const other = seen(oneOf(materials))
  // A straight border at a distance from the middle, beyond the sample more often than not.
  const radiusPx = 3 + random() * 24
  const border = radiusPx * (0.1 + 2.4 * random())
  const angle = random() * 2 * Math.PI
  const texture = random() < 0.5 ? 0 : 0.3 * random()
  const noise = { fullScaleElectrons: 2500 * 2 ** (random() * 4.5), readNoiseElectrons: 2 + 3 * random() }
  const field = valueNoise(9, seed)
  const at = (x: number, y: number, c: CfaColour) => {
    const along = (x - size / 2) * Math.cos(angle) + (y - size / 2) * Math.sin(angle)
    const bright = texture ? 2 ** (texture * field(x, y)) : 1
    return (along > border ? other : colour)[c] * bright
  }
  const sensor = makeMosaic({ width: size, height: size, light: at, noise: { ...noise, seed } })
  const { meanCameraRgb, reliability } = samplePatch(sensor, noise, [0.5, 0.5], radiusPx)
  if (!meanCameraRgb) return null
  const [wanted, found] = [ratios(colour), ratios(meanCameraRgb)]
  return { reliability, error: Math.hypot(found[0] - wanted[0], found[1] - wanted[1]) }
}

describe.skipIf(!spectraAreHere)('picks on fresh draws (skipped without the spectra)', () => {
  it('“good” is off by more than .05 stop in 2 % at most, and worse words are worse', () => {
    const drawn = Array.from({ length: picks }, (_, n) => drawPick(firstSeed + n)).filter((pick) => pick !== null)
    const errorsOf = (word: string) => drawn.filter(({ reliability }) => reliability === word).map(({ error }) => error)
    const off = (word: string) => errorsOf(word).filter((error) => error > 0.05).length / errorsOf(word).length
    expect(errorsOf('good').length).toBeGreaterThan(200)
    expect(off('good')).toBeLessThanOrEqual(0.02)
    expect(off('fair')).toBeGreaterThan(off('good'))
    expect(off('poor')).toBeGreaterThan(off('fair'))
  })
})
