// How developed files open: a neutral that was given them stands, a red frame of a converted compact is balanced as a raw one is.
import { expect, it } from 'vitest'

import { developedNeutral } from '../../src/decode/developed-neutral.ts'
import { defaultChain, opensAsDeveloped } from '../../src/edits/default-chain.ts'
import { plainFacts } from '../support/apply-operation.ts'

const facts = (found: readonly [number, number], isFinishedHere = false) => {
  return { ...plainFacts, developed: true, filterNm: null, referenceNeutral: developedNeutral(found, isFinishedHere) }
}

it('a balanced file, and any that was finished here, opens with a chain that changes nothing', () => {
  for (const opened of [facts([0.31, -0.3]), facts([1.9, -1], true)]) {
    expect(opensAsDeveloped(opened)).toBe(true)
    const [neutral, exposure] = defaultChain(opened)
    expect(neutral.values.highlightGuard).toBe(false)
    for (const stops of [neutral.values.redStops, neutral.values.blueStops]) expect(stops).toBeCloseTo(0, 15)
    expect(exposure.values).toMatchObject({ exposureEv: 0, contrast: 0, shoulder: 0 })
  }
})

it('a file that a camera left red is balanced and brightened as a raw file is', () => {
  const opened = facts([1.9, -1])
  expect(opensAsDeveloped(opened)).toBe(false)
  const [neutral, exposure] = defaultChain(opened)
  expect(neutral.values).toMatchObject({ redStops: -1.9, blueStops: 1, highlightGuard: true })
  expect(exposure.values.shoulder).toBe(0.5)
})
