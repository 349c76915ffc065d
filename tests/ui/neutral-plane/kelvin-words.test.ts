// What a neutral reads on the kelvin scale of a made-up camera; the gains of black bodies come from Planck's law.
import { expect, it, test } from 'vitest'

import { gainsOfChromaticity } from '../../../src/colour/camera-white.ts'
import { planckianChromaticity } from '../../../src/colour/planckian-locus.ts'
import { kelvinScale, kelvinWords } from '../../../src/ui/neutral-plane/kelvin-scale.ts'
import { plainFacts } from '../../support/apply-operation.ts'
import { madeUpCamera as camera } from '../../support/made-up-camera.ts'

const scale = kelvinScale({ ...plainFacts, ...camera })!
const wordsAt = (kelvin: number) => kelvinWords(scale, gainsOfChromaticity(camera, planckianChromaticity(kelvin))!)

it.each([
  [1500, /^Beyond the scale by 1\.\d stop: 1,500 K, Duv [+−]?0\.000$/],
  [2500, /^2,500 K, Duv [+−]?0\.000$/],
  [19_000, /^19,000 K, Duv [+−]?0\.000$/],
  [30_000, /^Hotter than 20,000 K, too blue for kelvin to be told$/],
  [45_000, /^Hotter than 20,000 K, too blue for kelvin to be told$/],
  [1_000_000, /^Beyond the scale by 0\.[1-9] stop: hotter than 20,000 K$/],
])('a black body at %i K', (kelvin, words) => expect(wordsAt(kelvin)).toMatch(words))

test('what no light is like, and what lies off the line, say so and how far off they are', () => {
  expect(kelvinWords(scale, { redStops: -1.5, blueStops: 8 })).toMatch(/^Beyond the scale by [1-9]/)
  const { redStops, blueStops } = gainsOfChromaticity(camera, planckianChromaticity(5000))!
  expect(kelvinWords(scale, { redStops: redStops - 1.5, blueStops: blueStops - 1.5 })).toMatch(
    /^Beyond the scale by \d\.\d stop: (too far off the line of black bodies|no visible light is like it)$/,
  )
})

test('a camera without a matrix has no scale', () => expect(kelvinScale(plainFacts)).toBeNull())
