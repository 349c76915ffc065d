import { expect, test } from 'vitest'
import { defaultChain } from '../../src/edits/default-chain.ts'
import { chainUnderProbe, type LightTarget, withLightPick } from '../../src/edits/light-picks.ts'
import { addStep, withProbe } from '../../src/edits/stack.ts'
import { plainFacts } from '../support/apply-operation.ts'

const chain = addStep(defaultChain(plainFacts), 'secondLight')
const target = (light: LightTarget['light']): LightTarget => ({ stepId: 'secondLight-1', light })
const valuesOf = (of: typeof chain, operation: string) => of.find((step) => step.operation === operation)!.values
const place = { x: 0.25, y: 0.5 }

// Flat grey of sensor A behind 590 nm in sun and in shade, computed from open spectra.
const inSun = [2 ** 1.91, 1, 2 ** -1.04].map((level) => level * 0.1)
const inShade = [2 ** 2.17, 1, 2 ** -1.42].map((level) => level * 0.01)

test('the pick in sun is the frame’s neutral, and the second pick gives the difference, in either order', () => {
  const sunFirst = withLightPick(withLightPick(chain, target('sun'), inSun, place), target('shade'), inShade, place)
  const shadeFirst = withLightPick(withLightPick(chain, target('shade'), inShade, place), target('sun'), inSun, place)
  expect(shadeFirst).toEqual(sunFirst)
  expect(valuesOf(sunFirst, 'neutral').redStops).toBeCloseTo(-1.91, 9)
  expect(valuesOf(sunFirst, 'neutral').blueStops).toBeCloseTo(1.04, 9)
  expect(valuesOf(sunFirst, 'secondLight').redStops).toBeCloseTo(1.91 - 2.17, 9)
  expect(valuesOf(sunFirst, 'secondLight').blueStops).toBeCloseTo(-1.04 + 1.42, 9)
  const [x, y, u, v, log2Red] = valuesOf(sunFirst, 'secondLight').shade as number[]
  expect([x, y]).toEqual([0.25, 0.5])
  for (const [is, wanted] of [
    [u, 2.17],
    [v, -1.42],
    [log2Red, 2.17 + Math.log2(0.01)],
  ])
    expect(is).toBeCloseTo(wanted, 9)
})

test('one pick alone leaves the difference as it was', () => {
  const one = withLightPick(chain, target('shade'), inShade, place)
  expect(valuesOf(one, 'secondLight').redStops).toBe(0)
  expect(valuesOf(one, 'neutral')).toEqual(valuesOf(chain, 'neutral'))
})

test('while roaming for a second light the whole frame shows the one neutral under the probe', () => {
  const gains = { redStops: -2, blueStops: 1.3 }
  const shown = chainUnderProbe(chain, gains, target('shade'))
  expect(shown.find((step) => step.id === 'secondLight-1')!.enabled).toBe(false)
  expect(valuesOf(shown, 'neutral')).toMatchObject(gains)
  expect(chainUnderProbe(chain, gains, null)).toEqual(withProbe(chain, gains))
})
