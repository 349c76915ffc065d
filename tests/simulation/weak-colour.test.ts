// The sky behind a 720 nm filter on the map made for it: colour enough, in the hue that it has without noise, and noise that an
// average of few pixels brings down. Open spectra (sensitivities: ISETCam; sky: Bird & Riordan 1986; light: ASTM G173-03).
import { expect, test } from 'vitest'
import { oklabToOklch, workingToOklab } from '../../src/colour/oklab.ts'
import { ownMaps } from '../../src/edits/own-maps.ts'
import { withMapping } from '../../src/edits/colour-map.ts'
import { defaultChain } from '../../src/edits/default-chain.ts'
import type { FrameFacts } from '../../src/frame/frame.ts'
import { describe } from '../../src/pipeline/describe.ts'
import { traceChain } from '../../src/pipeline/trace-chain.ts'
import { light, mix, recording, reflectance, type Rgb, spectraAreHere, times } from './camera.ts'

/** Sensor pixels of each colour in an average: as many as a frame of 24 megapixels has in each pixel of its whole view. */
const averaged = 16
const noise = { fullScaleElectrons: 50_000, readNoiseElectrons: 3 }
/** What the need asks for: OKLCh C/L, its noise, and degrees of hue. */
const wanted = { chroma: 0.08, noise: 0.02, hueDeg: 5 }

/** Pairs of normally distributed numbers from a fixed seed (Box and Muller 1958, over a linear congruence). */
function normal(seed: number): () => number {
  let state = seed
  const uniform = () => {
    state = (state * 1664525 + 1013904223) % 2 ** 32
    return (state + 0.5) / 2 ** 32
  }
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform())
}

/** A sky that is lit to its own level, and a frame of which it fills a third, foliage and concrete the rest. */
function scene(sensor: 'A' | 'B'): { sky: Rgb; facts: FrameFacts } {
  const record = recording(sensor, 720)
  const sun = light('sun_sky_global_AM15')
  const leaf = record(times(sun, reflectance('leaf_deciduous_b')))
  const concrete = record(times(sun, reflectance('concrete_road')))
  const sky = record(mix([1, light('sky_diffuse_clear')]))
  const exposure = 0.9 / Math.max(...leaf)
  const exposed = (rgb: Rgb) => rgb.map((value) => value * exposure) as unknown as Rgb
  const mean = [0, 1, 2].map((c) => (exposed(sky)[c] + exposed(leaf)[c] + exposed(concrete)[c]) / 3) as unknown as Rgb
  const ratios = [exposed(sky), exposed(leaf), exposed(concrete)].map(([r, g, b]) => [
    Math.log2(r / g),
    Math.log2(b / g),
  ])
  const referenceNeutral = [0, 1].map((i) => ratios.reduce((sum, ratio) => sum + ratio[i] / 3, 0)) as [number, number]
  const facts = { meanCameraRgb: mean, referenceNeutral, noise, cameraToXyz: null, filterNm: 720, aspect: 1.5 }
  return { sky: exposed(sky), facts }
}

/** OKLab a/L and b/L of `cameraRgb` after the mapping steps of the 720 nm map. */
function relativeColour(facts: FrameFacts, camera: Rgb): [number, number] {
  const map = ownMaps.find(({ filterNm }) => filterNm === 720)!
  const chain = withMapping(defaultChain(facts), map.steps)
  const last = chain.findIndex(({ operation }) => operation === 'exposureContrast')
  const { rgb } = traceChain(describe(chain, facts), [...camera, Math.max(...camera)], 0.5, 0.2)[last]
  const [lightness, a, b] = workingToOklab(rgb)
  return [a / lightness, b / lightness]
}

test.skipIf(!spectraAreHere).each(['A', 'B'] as const)(
  'sensor %s: C/L ≥ .08, noise ≤ .02 and hue within 5° for an average of sixteen pixels (skipped without open data)',
  (sensor) => {
    const { sky, facts } = scene(sensor)
    const random = normal(720)
    const noisy = (): Rgb => {
      const sum = [0, 0, 0]
      for (let i = 0; i < averaged; i++) {
        sky.forEach((level, c) => {
          const variance = level / noise.fullScaleElectrons + (noise.readNoiseElectrons / noise.fullScaleElectrons) ** 2
          sum[c] += (level + Math.sqrt(variance) * random()) / averaged
        })
      }
      return sum as unknown as Rgb
    }
    const colours = Array.from({ length: 400 }, () => relativeColour(facts, noisy()))
    const [meanA, meanB] = [0, 1].map((i) => colours.reduce((sum, colour) => sum + colour[i], 0) / colours.length)
    const spread = [meanA, meanB].map((mean, i) =>
      Math.sqrt(colours.reduce((sum, colour) => sum + (colour[i] - mean) ** 2, 0) / colours.length),
    )
    const [, chroma, hueDeg] = oklabToOklch([1, meanA, meanB])
    const [, , exactHueDeg] = oklabToOklch([1, ...relativeColour(facts, sky)])
    console.log(
      `720 nm sky, sensor ${sensor}: C/L ${chroma.toFixed(3)}, noise ${Math.hypot(...spread).toFixed(4)}, hue ${hueDeg.toFixed(1)}°`,
    )
    expect(chroma).toBeGreaterThanOrEqual(wanted.chroma)
    expect(Math.hypot(...spread)).toBeLessThanOrEqual(wanted.noise)
    expect(Math.abs(((hueDeg - exactHueDeg + 540) % 360) - 180)).toBeLessThanOrEqual(wanted.hueDeg)
  },
)
