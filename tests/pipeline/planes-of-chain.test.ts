import { describe as group, expect, it } from 'vitest'
import { strokesToNumbers } from '../../src/analysis/two-lights/strokes.ts'
import { defaultChain } from '../../src/edits/default-chain.ts'
import { addStep, setEnabled, setMask, setValues } from '../../src/edits/stack.ts'
import { makePart } from '../../src/operations/masks/mask.ts'
import { planesOfChain, suppliesOf } from '../../src/pipeline/planes-of-chain.ts'
import { plainFacts } from '../support/apply-operation.ts'

// Flat grey of sensor A behind 590 nm in sun and in shade, computed from open spectra; the shade a tenth as bright.
const sun = [0.2, 0.5, 1.91, -1.04, -1]
const shade = [0.8, 0.5, 2.17, -1.42, -1 + Math.log2(0.1)]

function overview(width: number, height: number) {
  const rgba = new Float32Array(width * height * 4)
  for (let i = 0; i < width * height; i++) {
    const [, , u, v, log2Red] = i % width < width / 2 ? sun : shade
    const red = 2 ** log2Red
    rgba.set([red, red / 2 ** u, 2 ** (v - u) * red, red], i * 4)
  }
  return { width, height, rgba, scale: 2 }
}

const source = { noise: plainFacts.noise, referenceNeutral: plainFacts.referenceNeutral, photosites: 1 }
const lit = addStep(defaultChain(plainFacts), 'secondLight', { sun, shade })
const planeOf = (chain: typeof lit) =>
  suppliesOf(chain, { ...source, overview: overview(120, 80) })['secondLight-1 shade']
const at = (chain: typeof lit, x: number) => planeOf(chain).data[40 * 120 + x]

group('the material plane', () => {
  const masked = (kind: string) =>
    setMask(defaultChain(plainFacts), 'channelMix-1', { parts: [makePart(kind)], inverted: false, strength: 1 })

  it('is made once where a step that is on asks for foliage or sky, and else not', () => {
    expect(planesOfChain(masked('foliage')).map(({ name }) => name)).toEqual(['material'])
    expect(planesOfChain(masked('level'))).toEqual([])
    expect(planesOfChain(setEnabled(masked('sky'), 'channelMix-1', false))).toEqual([])
  })

  it('counts from the grey of the frame: here the larger, brighter colour', () => {
    const { material } = suppliesOf(masked('sky'), { ...source, overview: overview(120, 80) })
    const at = (x: number) => material.data[40 * material.width + x]
    // Shade against sun in log2 R/B: (2.17 + 1.42) − (1.91 + 1.04).
    expect(at(100) - at(20)).toBeCloseTo(0.64, 2)
    expect(Math.min(Math.abs(at(20)), Math.abs(at(100)))).toBeLessThan(0.01)
  })
})

group('the plane of a second light', () => {
  it('tells sun from shade where both were picked', () => {
    expect(at(lit, 20)).toBeLessThan(0.02)
    expect(at(lit, 100)).toBeGreaterThan(0.98)
  })

  it('takes what is smooth and redder than the picked shade for sky, unless the shade was picked there', () => {
    // A third of a stop less red than the right half.
    const lessRed = [0.5, 2.03, -1.22, shade[4]]
    expect(at(setValues(lit, 'secondLight-1', { shade: [0.1, ...lessRed] }), 100)).toBeLessThan(0.02)
    expect(at(setValues(lit, 'secondLight-1', { shade: [0.8, ...lessRed] }), 100)).toBeGreaterThan(0.98)
  })

  it('counts what has the colour of the picked shade as shade, wherever that was picked', () => {
    expect(at(setValues(lit, 'secondLight-1', { shade: [0.1, ...shade.slice(1)] }), 100)).toBeGreaterThan(0.98)
  })

  it('is the same after other strokes and other picks as at once', () => {
    const shared = overview(120, 80)
    const painted = (x: number, light: 'sun' | 'shade') => {
      const strokes = strokesToNumbers([{ points: [[x, 0.5]], radius: 0.05, light }])
      return setValues(lit, 'secondLight-1', { strokes })
    }
    const earlier = [lit, painted(0.8, 'sun'), setValues(lit, 'secondLight-1', { sun: [0.3, ...sun.slice(1)] })]
    for (const chain of earlier) suppliesOf(chain, { ...source, overview: shared })
    const now = painted(0.2, 'shade')
    expect(suppliesOf(now, { ...source, overview: shared })['secondLight-1 shade']).toEqual(planeOf(now))
  })

  it('is not made without two picks, between picks of one light, or while the step is off', () => {
    expect(planeOf(setValues(lit, 'secondLight-1', { sun: [] }))).toBeUndefined()
    expect(planeOf(setValues(lit, 'secondLight-1', { sun: shade }))).toBeUndefined()
    expect(planesOfChain(setEnabled(lit, 'secondLight-1', false))).toEqual([])
  })

  it('passes from 0 to 1 between the ends where it is graduated, and takes strokes there too', () => {
    const stroke = { points: [[0.1, 0.5]] as const, radius: 0.05, light: 'shade' as const }
    const ends = { way: 'graduated', ends: [0.25, 0.5, 0.75, 0.5], strokes: strokesToNumbers([stroke]) }
    const graduated = setValues(lit, 'secondLight-1', ends)
    expect([at(graduated, 25), at(graduated, 95), at(graduated, 12)]).toEqual([0, 1, 1])
    expect(at(graduated, 59) + at(graduated, 60)).toBeCloseTo(1, 5)
  })

  it('has an order that says all it depends on, the same for the same step', () => {
    expect(planesOfChain(lit)).toEqual(planesOfChain(structuredClone(lit)))
    expect(planesOfChain(setValues(lit, 'secondLight-1', { redStops: 0.2 }))).toEqual(planesOfChain(lit))
  })
})
