// Edits in the browser's own database, and work that goes on where there is none: the store is real, its refusals are made.
import { beforeEach, expect, it, vi } from 'vitest'

import { createEditStore } from '../../src/edits/edit-store.ts'
import { addMark } from '../../src/edits/marks.ts'
import { addStep } from '../../src/edits/stack.ts'
import { createKeptStore, type KeptStore } from '../../src/roll/kept-store.ts'
import { createKeeping } from '../../src/workbench/keeping.ts'
import { changeEntry, createSessionStore } from '../../src/workbench/session-store.ts'
import { createSupplyStore } from '../../src/workbench/supply-store.ts'

const fingerprint = 'ab'.repeat(32)
const chain = addStep(addStep([], 'neutral', { redStops: -1.25, blueStops: 2 }), 'outputTransform')

/** A page of its own: stores as after a reload, one entry in the roll. */
function openPage(store: KeptStore = createKeptStore()) {
  const session = createSessionStore()
  const edits = createEditStore()
  const keeping = createKeeping({ session, edits, supplies: createSupplyStore(), store })
  const entry = { id: 'one', fileName: 'dune.dng', state: { kind: 'ready' }, pictureUrl: null } as const
  session.setState({ entries: [{ ...entry, statedFilterNm: undefined }] })
  return { session, edits, keeping, store }
}
type Page = ReturnType<typeof openPage>

function work({ session, edits, keeping }: Page) {
  edits.open('one', chain)
  keeping.follow('one', fingerprint, 'dune.dng')
  changeEntry(session, 'one', { statedFilterNm: 695 })
  edits.changeMarks('one', (marks) => addMark(marks, { redStops: -1, blueStops: 1 }, { x: 0.5, y: 0.25 }))
}
const noticesOf = ({ session }: Page) => session.getState().notices.map(({ text }) => text)

beforeEach(() => createKeptStore().forgetAll())

it('keeps chain, marks and filter, and has them again on another page', async () => {
  const before = openPage()
  work(before)
  await vi.waitFor(async () => expect(await before.keeping.countKept()).toBe(1))
  const kept = await openPage().keeping.restore(fingerprint, 'another name.dng')
  expect(kept).toMatchObject({ filterNm: 695, chain, marks: before.edits.marks('one') })
})

it('writes at once when the page goes away', async () => {
  const before = openPage()
  work(before)
  await before.keeping.countKept()
  dispatchEvent(new Event('pagehide'))
  expect(await openPage().keeping.restore(fingerprint, 'dune.dng')).toMatchObject({ filterNm: 695, chain })
})

it('leaves what it cannot read as it is until the edit changes, and says so', async () => {
  const newer = { app: 'rimeleaf', version: 99, chain: 'of another kind' }
  const page = openPage()
  await page.store.keepEdit(fingerprint, newer as never)
  expect(await page.keeping.restore(fingerprint, 'dune.dng')).toBeNull()
  expect(noticesOf(page)).toEqual([expect.stringMatching(/“dune.dng” cannot be used, at version: .*newer Rimeleaf/)])
  page.edits.open('one', chain)
  page.keeping.follow('one', fingerprint, 'dune.dng')
  dispatchEvent(new Event('pagehide'))
  expect(await page.store.edit(fingerprint)).toEqual(newer)
  page.edits.apply('one', 'Hue turn', (now) => addStep(now, 'hueTurn'))
  await vi.waitFor(async () => expect(await page.store.edit(fingerprint)).toMatchObject({ version: 2 }))
})

it.each([
  ['SecurityError', /gives this page no storage/],
  ['QuotaExceededError', /storage for this page is full/],
])('says once that nothing is kept (%s), and work goes on', async (name, words) => {
  const refuse = () => Promise.reject(new DOMException('refused', name))
  const store = { ...createKeptStore(), edit: refuse, keepEdit: refuse, table: refuse, keepTable: refuse }
  const page = openPage(store)
  expect(await page.keeping.restore(fingerprint, 'dune.dng')).toBeNull()
  work(page)
  dispatchEvent(new Event('pagehide'))
  await vi.waitFor(() => expect(page.session.getState().keepsEdits).toBe(false))
  expect(noticesOf(page)).toEqual([expect.stringMatching(words)])
  expect(page.keeping.editOf('one')).toMatchObject({ filterNm: 695, chain })
})

it('forgets everything, and does not write open frames again until they change', async () => {
  const page = openPage()
  work(page)
  await vi.waitFor(async () => expect(await page.keeping.countKept()).toBe(1))
  await page.keeping.forgetKept()
  dispatchEvent(new Event('pagehide'))
  expect(await page.keeping.countKept()).toBe(0)
  expect(page.edits.history('one')?.chain).toBe(chain)
})

it('says once where another window changes the edit of a file that is open here too', async () => {
  const here = openPage()
  work(here)
  await vi.waitFor(async () => expect(await here.keeping.countKept()).toBe(1))
  const there = openPage()
  work(there)
  await vi.waitFor(() =>
    expect(noticesOf(here)).toEqual([expect.stringMatching(/“dune.dng” is open in another window/)]),
  )
  there.edits.apply('one', 'Hue turn', (now) => addStep(now, 'hueTurn'))
  await vi.waitFor(async () => expect(await there.store.edit(fingerprint)).toMatchObject({ chain: { length: 3 } }))
  expect(noticesOf(here)).toHaveLength(1)
})
