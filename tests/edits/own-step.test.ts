import { expect, test } from 'vitest'

import { lackingExposureEv, withMaskOnOwnStep } from '../../src/edits/own-step.ts'
import { addStep, type Chain, setEnabled, setMask } from '../../src/edits/stack.ts'
import { makePart } from '../../src/operations/masks/mask.ts'

const mask = { parts: [makePart('sky')], inverted: false, strength: 1 }
let opening: Chain = addStep([], 'neutral')
opening = addStep(opening, 'exposureContrast', { exposureEv: 2.5 })
opening = addStep(opening, 'outputTransform')
const limited = setMask(opening, 'exposureContrast-1', mask)
const lacking = (chain: Chain) =>
  lackingExposureEv(
    chain,
    chain.find(({ id }) => id === 'exposureContrast-1')!,
  )

test('only the step that alone exposes a frame leaves something lacking when it is limited', () => {
  expect(lacking(opening)).toBe(0)
  expect(lacking(limited)).toBe(2.5)
  const second = addStep(limited, 'exposureContrast')
  expect(lacking(second)).toBe(0)
  expect(lacking(setEnabled(second, 'exposureContrast-2', false))).toBe(2.5)
})

test('places move on to a step right behind, which changes nothing yet, and the first acts everywhere', () => {
  const chain = withMaskOnOwnStep(limited, 'exposureContrast-1', mask)
  expect(chain.map(({ id }) => id)).toEqual([
    'neutral-1',
    'exposureContrast-1',
    'exposureContrast-2',
    'outputTransform-1',
  ])
  expect(chain[1]).toEqual(opening[1])
  expect(chain[2]).toMatchObject({ mask, values: { exposureEv: 0 } })
})
