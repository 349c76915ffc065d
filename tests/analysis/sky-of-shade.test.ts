// Sky is left out of found shade on painted frames, with an infrared filter and without.
import { expect, it } from 'vitest'
import { makePlane } from '../../src/pipeline/planes-of-chain.ts'
import { randomNumbers } from '../support/synthetic-sensor.ts'
import { plainFacts } from '../support/apply-operation.ts'

const [width, height] = [240, 160]
const skyEnds = 60

type Light = readonly [u: number, v: number, log2Red: number]
/** Grey in sun and shade and clear sky as log2 R/G, log2 B/G and log2 R: our simulation of a sensor behind 590 nm and of one without any filter. */
const lights: Record<'590 nm' | 'no filter', Record<'sun' | 'shade' | 'sky', Light>> = {
  '590 nm': { sun: [1.76, -0.89, -1], shade: [2.0, -1.16, -4.3], sky: [2.1, -1.25, -3] },
  'no filter': { sun: [0.36, -0.46, -1], shade: [0.14, -0.19, -4], sky: [-0.1, 0.1, -2.5] },
}

/** Smooth sky above rough ground of one grey, its left half in sun. */
function painted({ sun, shade, sky }: (typeof lights)['590 nm']) {
  const random = randomNumbers(7)
  const rgba = new Float32Array(width * height * 4)
  for (let i = 0; i < width * height; i++) {
    const isSky = i < skyEnds * width
    const [u, v, log2Red] = isSky ? sky : i % width < width / 2 ? sun : shade
    const red = 2 ** log2Red * (isSky ? 1 : 0.5 + random())
    rgba.set([red, red / 2 ** u, (red / 2 ** u) * 2 ** v, red], i * 4)
  }
  return { overview: { width, height, rgba, scale: 2 }, photosites: 1, noise: plainFacts.noise }
}

it.each(Object.keys(lights) as (keyof typeof lights)[])('%s: sky is no shade, and shade stays', (glass) => {
  const { sun, shade } = lights[glass]
  const referenceNeutral = [sun[0], sun[1]] as const
  const making = { kind: 'found shade', sun, shade, shadePlace: [0.75, 0.75], strokes: [] } as const
  const plane = makePlane({ name: 'shade', making }, { ...painted(lights[glass]), referenceNeutral })
  if (plane?.kind !== 'plane') throw new Error('No shade was made.')
  const meanOver = (left: number, right: number, top: number, bottom: number) => {
    let sum = 0
    for (let y = top; y < bottom; y++) for (let x = left; x < right; x++) sum += plane.data[y * width + x]
    return sum / ((right - left) * (bottom - top))
  }
  expect(meanOver(0, width, 0, skyEnds - 8)).toBeLessThan(0.02)
  expect(meanOver(130, width, skyEnds + 12, height)).toBeGreaterThan(0.95)
  expect(meanOver(0, 110, skyEnds + 12, height)).toBeLessThan(0.05)
})
