// Stating a filter: which chains change, that undo brings them back, and what is said. Expected chains are those of `defaultChain`,
// which has its own test; sentences are the screen's own.
import { expect, test } from 'vitest'

import { defaultChain } from '../../src/edits/default-chain.ts'
import { createEditStore } from '../../src/edits/edit-store.ts'
import { setValues } from '../../src/edits/stack.ts'
import type { FrameFacts } from '../../src/frame/frame.ts'
import { createFilterCommand } from '../../src/workbench/filter-command.ts'
import { createSessionStore } from '../../src/workbench/session-store.ts'

const opened: FrameFacts = {
  meanCameraRgb: [0.3, 0.2, 0.15],
  referenceNeutral: [0.6, -0.4],
  noise: { fullScaleElectrons: 50_000, readNoiseElectrons: 4 },
  cameraToXyz: null,
  filterNm: undefined,
  aspect: 1.5,
}

function stating() {
  const session = createSessionStore()
  const edits = createEditStore()
  let facts = opened
  edits.open('one', defaultChain(facts))
  const noteFilter = (_id: string, filterNm: number | null) => void (facts = { ...facts, filterNm })
  const state = createFilterCommand({ session, edits, noteFilter, shown: () => ({ id: 'one', facts }) })
  const chain = () => edits.history('one')!.chain
  return { state, session, edits, chain, facts: () => facts, said: () => session.getState().notices.at(-1)?.text ?? '' }
}
const operations = (chain: readonly { operation: string }[]) => chain.map(({ operation }) => operation)

test('a chain as it opened becomes the one for the filter, says what came, and is undone', () => {
  const { state, edits, chain, facts, said } = stating()
  const before = chain()
  expect(operations(before)).not.toContain('channelMix')
  state('one', 590)
  expect(chain()).toEqual(defaultChain({ ...opened, filterNm: 590 }))
  expect(operations(chain())).toContain('channelMix')
  expect(said()).toBe('“Channel mix” came into the chain, as frames open for a 590 nm filter; undo takes it out.')
  expect(facts().filterNm).toBe(590)
  state('one', null)
  expect(chain()).toEqual(before)
  expect(said()).toBe('“Channel mix” left the chain, as frames open for full spectrum; undo puts it back.')
  edits.undo('one')
  edits.undo('one')
  expect(chain()).toEqual(before)
})

test('a filter that opens the same chain changes and says nothing', () => {
  const { state, edits, session } = stating()
  state('one', null)
  expect(edits.history('one')!.past).toHaveLength(0)
  expect(session.getState().notices).toHaveLength(0)
})

test('a changed chain stays, and a note says so', () => {
  const { state, edits, chain, facts, said } = stating()
  edits.apply('one', 'Exposure', (now) => setValues(now, 'exposureContrast-1', { exposureEv: 3 }))
  const before = chain()
  state('one', 590)
  expect(chain()).toBe(before)
  expect(facts().filterNm).toBe(590)
  expect(said()).toMatch(/^The filter is noted/)
})
