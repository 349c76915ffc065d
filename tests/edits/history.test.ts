import { expect, test } from 'vitest'
import { defaultChain } from '../../src/edits/default-chain.ts'
import {
  begin,
  cancel,
  change,
  end,
  record,
  redo,
  redoName,
  startHistory,
  undo,
  undoName,
} from '../../src/edits/history.ts'
import { setValues } from '../../src/edits/stack.ts'
import { plainFacts } from '../support/apply-operation.ts'

const opening = defaultChain(plainFacts)
const exposed = (exposureEv: number) => setValues(opening, 'exposureContrast-1', { exposureEv })
const start = startHistory(opening)

test('one gesture is one entry, however many changes it holds', () => {
  let history = begin(start, 'Exposure')
  for (const exposureEv of [0.1, 0.2, 0.3]) history = change(history, exposed(exposureEv))
  history = end(history)
  expect(history.past).toHaveLength(1)
  expect(history.chain).toEqual(exposed(0.3))
  expect(undo(history).chain).toEqual(opening)
})

test('a cancelled gesture and one without effect leave no entry', () => {
  expect(cancel(change(begin(start, 'Exposure'), exposed(2)))).toEqual(start)
  const backAgain = change(change(begin(start, 'Exposure'), exposed(2)), structuredClone(opening))
  expect(end(backAgain)).toEqual(start)
})

test('undo and redo name what they take back and bring again', () => {
  const history = record(record(start, 'Exposure', exposed(1)), 'Shoulder', exposed(2))
  expect([undoName(history), redoName(history)]).toEqual(['Shoulder', null])
  const back = undo(history)
  expect([undoName(back), redoName(back)]).toEqual(['Exposure', 'Shoulder'])
  expect(redo(back)).toEqual(history)
  expect(undo(undo(undo(back))).chain).toEqual(opening)
  expect(redo(history)).toEqual(history)
})

test('a new change forgets what could be redone', () => {
  const back = undo(record(start, 'Exposure', exposed(1)))
  expect(redoName(record(back, 'Shoulder', exposed(3)))).toBeNull()
})

test('a gesture left open is ended by the next one and by undo', () => {
  const open = change(begin(start, 'Exposure'), exposed(1))
  const next = end(change(begin(open, 'Shoulder'), exposed(2)))
  expect(next.past.map(({ name }) => name)).toEqual(['Exposure', 'Shoulder'])
  expect(undo(open)).toMatchObject({ chain: opening, gesture: null })
})

test('outside a gesture a change is not taken', () => {
  expect(change(start, exposed(1))).toBe(start)
})

test('the oldest entries give way beyond 300', () => {
  let history = start
  for (let i = 1; i <= 305; i++) history = record(history, `Exposure ${i}`, exposed(i / 100))
  expect(history.past).toHaveLength(300)
  expect(history.past[0].name).toBe('Exposure 6')
})
