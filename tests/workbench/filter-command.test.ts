// Stating a filter: which chains change, that undo brings them back, and what is said. Expected chains are those of `defaultChain`,
// which has its own test; sentences are the screen's own.
import { expect, test } from 'vitest'

import { defaultChain } from '../../src/edits/default-chain.ts'
import { createEditStore } from '../../src/edits/edit-store.ts'
import { setValues } from '../../src/edits/stack.ts'
import type { FrameFacts } from '../../src/frame/frame.ts'
import { createFilterCommand } from '../../src/workbench/filter-command.ts'
import { changeEntry, createSessionStore } from '../../src/workbench/session-store.ts'

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
  const facts = new Map([['one', opened]])
  edits.open('one', defaultChain(opened))
  const noteFilter = (id: string, filterNm: number | null) => {
    facts.set(id, { ...(facts.get(id) ?? opened), filterNm })
    changeEntry(session, id, { statedFilterNm: filterNm })
  }
  const state = createFilterCommand({ session, edits, noteFilter, factsOf: (id) => facts.get(id) ?? null })
  const chain = (id = 'one') => edits.history(id)!.chain
  /** Adds a frame to the roll; a decoded one has its opening chain. */
  const add = (id: string, camera: string, statedFilterNm?: number | null) => {
    const entry = {
      id,
      fileName: `${id}.dng`,
      state: { kind: 'ready' },
      pictureUrl: null,
      statedFilterNm,
      camera,
    } as const
    session.setState(({ entries }) => ({ entries: [...entries, entry] }))
    if (edits.history(id)) return
    facts.set(id, { ...opened, filterNm: statedFilterNm })
    edits.open(id, defaultChain(facts.get(id)!))
  }
  const last = () => session.getState().notices.at(-1)
  return { state, session, edits, chain, add, last, facts: () => facts.get('one')!, said: () => last()?.text ?? '' }
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

test('the filter is offered for frames by the same camera that have none, and those stated meanwhile stand', () => {
  const { state, session, edits, chain, add, last } = stating()
  add('one', 'Fennel Two')
  add('two', 'Fennel Two')
  add('worked on', 'Fennel Two')
  add('meanwhile', 'Fennel Two')
  add('stated', 'Fennel Two', 850)
  add('stated as none', 'Fennel Two', null)
  add('another camera', 'Sorrel')
  add('no camera', '')
  edits.apply('worked on', 'Exposure', (now) => setValues(now, 'exposureContrast-1', { exposureEv: 3 }))
  const worked = chain('worked on')
  state('one', 590)
  expect(last()!.answer!.words).toBe('State it for 3 more')
  const stated = () => session.getState().entries.map(({ statedFilterNm }) => statedFilterNm)
  expect(stated()).toEqual([590, undefined, undefined, undefined, 850, null, undefined, undefined])
  changeEntry(session, 'meanwhile', { statedFilterNm: 720 })
  last()!.answer!.act()
  expect(stated()).toEqual([590, 590, 590, 720, 850, null, undefined, undefined])
  expect(chain('two')).toEqual(defaultChain({ ...opened, filterNm: 590 }))
  expect(chain('worked on')).toBe(worked)
  expect(chain('meanwhile')).toEqual(defaultChain(opened))
  edits.undo('two')
  expect(chain('two')).toEqual(defaultChain(opened))
})

test('nothing is offered where every frame by the camera has its filter', () => {
  const { state, add, last } = stating()
  add('one', 'Fennel Two')
  add('stated', 'Fennel Two', 850)
  state('one', null)
  expect(last()).toBeUndefined()
})
