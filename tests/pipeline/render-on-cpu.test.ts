import Color from 'colorjs.io'
import { expect, test } from 'vitest'
import { defaultChain } from '../../src/edits/default-chain.ts'
import { addStep, setValues } from '../../src/edits/stack.ts'
import { describe } from '../../src/pipeline/describe.ts'
import { renderOnCpu } from '../../src/pipeline/render-on-cpu.ts'
import { plainFacts } from '../support/apply-operation.ts'

const width = 7
const height = 5
const rgba = Float32Array.from({ length: width * height * 4 }, (_, i) => ((i * 37) % 101) / 110)
const whole = { x: 0, y: 0, width, height, frameWidth: width, frameHeight: height }

test('flat grey comes out as the mid grey of sRGB: 18 % is code .4614 (IEC 61966-2-1)', () => {
  const chain = setValues(defaultChain(plainFacts), 'exposureContrast-1', { exposureEv: Math.log2(0.18 / 0.1) })
  const grey = Float32Array.of(0.342, 0.1, 0.054, 0.342)
  const rgb = renderOnCpu(describe(chain, plainFacts), grey, { ...whole, width: 1, height: 1 })
  for (const value of rgb) expect(value).toBeCloseTo(0.461356, 5)
})

test('gains, exchange, turn, exposure and encoding one after the other equal colorjs.io and plain arithmetic', () => {
  const chain = addStep(
    setValues(defaultChain(plainFacts), 'exposureContrast-1', { exposureEv: 0.5, contrast: 0, shoulder: 0 }),
    'hueTurn',
    { angleDeg: 35 },
  )
  const camera = [0.3, 0.1, 0.05]
  const working = [camera[2] / 0.54, camera[1], camera[0] / 3.42].map((level) => level * Math.SQRT2)
  const expected = new Color('rec2020-linear', working as [number, number, number])
    .set('oklch.h', (hue) => hue + 35)
    .to('srgb').coords
  const one = { ...whole, width: 1, height: 1 }
  const rgb = renderOnCpu(describe(chain, plainFacts), Float32Array.of(...camera, 0.3), one)
  rgb.forEach((value, i) => expect(Math.abs(value - expected[i]!)).toBeLessThan(1e-5))
})

test('a tile equals its part of the whole picture bit for bit', () => {
  const description = describe(defaultChain(plainFacts), plainFacts)
  const picture = renderOnCpu(description, rgba, whole)
  const rows = { ...whole, y: 2, height: 2 }
  const tile = renderOnCpu(description, rgba.slice(2 * width * 4, 4 * width * 4), rows)
  expect(tile).toEqual(picture.slice(2 * width * 3, 4 * width * 3))
})

test('a source of the wrong size is refused in words', () => {
  const description = describe(defaultChain(plainFacts), plainFacts)
  expect(() => renderOnCpu(description, rgba.slice(4), whole)).toThrow(/7 × 5 pixels need 140 numbers, not 136/)
})
