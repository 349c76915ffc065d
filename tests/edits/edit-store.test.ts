import { expect, test } from 'vitest'
import { defaultChain } from '../../src/edits/default-chain.ts'
import { createEditStore } from '../../src/edits/edit-store.ts'
import { undoName } from '../../src/edits/history.ts'
import { setEnabled, setValues, withProbe } from '../../src/edits/stack.ts'
import { plainFacts } from '../support/apply-operation.ts'

const opening = defaultChain(plainFacts)

function openTwo() {
  const edits = createEditStore()
  edits.open('meadow', opening)
  edits.open('shore', opening)
  return edits
}

test('frames have histories of their own', () => {
  const edits = openTwo()
  edits.apply('meadow', 'Switch off exchange', (chain) => setEnabled(chain, 'channelMix-1', false))
  expect(edits.history('meadow')!.chain[1].enabled).toBe(false)
  expect(edits.history('shore')!.chain).toEqual(opening)
  edits.undo('meadow')
  expect(edits.history('meadow')!.chain).toEqual(opening)
  edits.redo('meadow')
  expect(edits.history('meadow')!.chain[1].enabled).toBe(false)
})

test('a drag is one entry, and cancelling it leaves everything as it was', () => {
  const edits = openTwo()
  const drag = (exposureEv: number) =>
    edits.changeGesture('shore', (chain) => setValues(chain, 'exposureContrast-1', { exposureEv }))
  edits.beginGesture('shore', 'Exposure')
  drag(1)
  drag(2)
  edits.endGesture('shore')
  expect(edits.history('shore')!.past).toHaveLength(1)
  const before = edits.history('shore')
  edits.beginGesture('shore', 'Exposure')
  drag(3)
  edits.cancelGesture('shore')
  expect(edits.history('shore')).toEqual(before)
})

test('committing a probe gives the chain that was hovered, as one entry', () => {
  const edits = openTwo()
  const probe = { redStops: -1.2, blueStops: 0.8 }
  const hovered = withProbe(edits.history('shore')!.chain, probe)
  edits.apply('shore', 'Neutral from picture', (chain) => withProbe(chain, probe))
  expect(edits.history('shore')!.chain).toEqual(hovered)
  expect(undoName(edits.history('shore')!)).toBe('Neutral from picture')
})

test('an edit that throws leaves state and subscribers alone', () => {
  const edits = openTwo()
  const before = edits.store.getState()
  let calls = 0
  edits.store.subscribe(() => calls++)
  expect(() =>
    edits.apply('shore', 'Exposure', (chain) => setValues(chain, 'exposureContrast-1', { exposureEv: Infinity })),
  ).toThrow(/finite/)
  expect(edits.store.getState()).toBe(before)
  expect(calls).toBe(0)
})

test('a frame without edits is refused in words; a closed one is forgotten', () => {
  const edits = openTwo()
  edits.close('shore')
  expect(edits.history('shore')).toBeUndefined()
  expect(() => edits.undo('shore')).toThrow(/“shore” has no edits yet/)
})

test('all edits survive JSON', () => {
  const edits = openTwo()
  edits.apply('meadow', 'Exposure', (chain) => setValues(chain, 'exposureContrast-1', { exposureEv: 1 }))
  const state = edits.store.getState()
  expect(JSON.parse(JSON.stringify(state))).toEqual(state)
})
