// Keeps the edit of every opened frame between sessions: chain, marks and stated filter, under the fingerprint of its file.
// Written shortly after each change and when the page goes away. Where the browser keeps nothing, work goes on all the same.
import type { EditStore } from '../edits/edit-store.ts'
import { lutSupply } from '../operations/colour-lut.ts'
import type { Step } from '../operations/step.ts'
import { type Edit, EditFault, type NamedTable, tableIdsOf } from '../roll/edit.ts'
import { contentWithoutTables, readContent } from '../roll/edit-content.ts'
import type { KeptStore } from '../roll/kept-store.ts'
import { listenToOtherWindows } from './other-windows.ts'
import { notify, type SessionStore } from './session-store.ts'
import type { SupplyStore } from './supply-store.ts'
import type { Workbench } from './workbench.ts'

/** Quiet time after a change before it is written, in ms: a drag makes one record, a crash costs little (our choice). */
const settleMs = 400

interface Followed {
  readonly fingerprint: string
  readonly fileName: string
  /** The edit as it stands in the database. */
  written: Edit | null
}

export interface Keeping extends Pick<Workbench, 'countKept' | 'forgetKept'> {
  /** What is kept for a file, its tables offered to all frames; null where there is nothing to be used. Never rejects. */
  restore(fingerprint: string, fileName: string): Promise<Edit | null>
  /** From now on the edit of this entry is kept. */
  follow(id: string, fingerprint: string, fileName: string): void
  /** Offers tables to all frames and keeps them. */
  adoptTables(tables: Edit['tables']): void
  /** Makes all tables that are kept known. */
  recallTables(): Promise<void>
  forgetTable(hash: string): Promise<void>
  /** The tables that steps name, as far as they are known here. */
  tablesOf(steps: readonly Pick<Step, 'values'>[]): Promise<Edit['tables']>
  /** The edit of an entry as it stands, without tables, or null. */
  editOf(id: string): Edit | null
}

interface KeepingContext {
  readonly session: SessionStore
  readonly edits: EditStore
  readonly supplies: SupplyStore
  readonly store: KeptStore
}

export function createKeeping({ session, edits, supplies, store }: KeepingContext): Keeping {
  const followed = new Map<string, Followed>()
  /** Fingerprints of files for which the database holds something: it is not written over before the edit changes. */
  const held = new Set<string>()
  const known = new Map<string, NamedTable>()
  let timer: ReturnType<typeof setTimeout> | undefined

  function complain(reason: unknown): void {
    if (!session.getState().keepsEdits) return
    session.setState({ keepsEdits: false })
    const full = reason instanceof DOMException && reason.name === 'QuotaExceededError'
    const why = full ? 'its storage for this page is full' : 'it gives this page no storage, as in a private window'
    const what = 'Save an edit file of each frame whose edit should last.'
    notify(session, 'problem', `This browser does not keep your edits for the next time: ${why}. ${what}`)
  }

  function editOf(id: string): Edit | null {
    const chain = edits.history(id)?.chain
    const filterNm = session.getState().entries.find((entry) => entry.id === id)?.statedFilterNm
    if (!chain) return null
    const file = followed.get(id)
    const madeOn = file && { fileName: file.fileName, fingerprint: file.fingerprint }
    return { filterNm, chain, marks: edits.marks(id), tables: {}, madeOn }
  }

  const otherWindows = listenToOtherWindows('edits', (fingerprint) => {
    const frame = [...followed.values()].find((frame) => frame.fingerprint === fingerprint)
    if (!frame) return
    const what = `“${frame.fileName}” is open in another window too, and its edit was changed there.`
    notify(
      session,
      'problem',
      `${what} Kept for the next time is whichever of the two changes last; close one of them.`,
    )
  })

  function onWritten(fingerprint: string): void {
    otherWindows.tellWritten(fingerprint)
    if (unwritten().length === 0) session.setState({ keepsEdits: true })
  }

  const isSame = (a: Edit | null, b: Edit | null) =>
    a?.chain === b?.chain && a?.marks === b?.marks && a?.filterNm === b?.filterNm

  function unwritten(): [Followed, Edit][] {
    return [...followed].flatMap(([id, frame]) => {
      const now = editOf(id)
      return now && !isSame(now, frame.written) ? [[frame, now] as [Followed, Edit]] : []
    })
  }

  function write(): void {
    clearTimeout(timer)
    timer = undefined
    for (const [frame, edit] of unwritten()) {
      frame.written = edit
      store
        .keepEdit(frame.fingerprint, contentWithoutTables(edit))
        .then(() => onWritten(frame.fingerprint))
        .catch((reason: unknown) => {
          if (frame.written === edit) frame.written = null
          complain(reason)
        })
    }
  }

  function onChange(): void {
    if (timer === undefined && unwritten().length === 0) return
    clearTimeout(timer)
    timer = setTimeout(write, settleMs)
  }
  edits.store.subscribe(onChange)
  session.subscribe((now, before) => {
    if (now.entries !== before.entries) onChange()
  })
  addEventListener('pagehide', write)
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') write()
  })

  function listKnown(): void {
    const tables = [...known].flatMap(
      ([
        id,
        {
          name,
          facts,
          table: { kind, width: size },
        },
      ]) => (kind === 'plane' ? [] : [{ id, name, facts, kind, size }]),
    )
    session.setState({ tables: tables.sort((a, b) => a.name.localeCompare(b.name, 'en', { numeric: true })) })
  }

  function share(tables: Edit['tables']): void {
    for (const [hash, table] of Object.entries(tables)) {
      known.set(hash, table)
      supplies.share(lutSupply(hash), table.table)
    }
    listKnown()
  }

  return {
    editOf,
    async restore(fingerprint, fileName) {
      try {
        const content = await store.edit(fingerprint)
        if (content === undefined) return null
        held.add(fingerprint)
        const edit = await readContent(content, (hash) => store.table(hash))
        share(edit.tables)
        return edit
      } catch (reason) {
        if (!(reason instanceof EditFault)) complain(reason)
        else {
          const where = `at ${reason.place}: ${reason.message}`
          const words = `The edit kept for “${fileName}” cannot be used, ${where} The frame opens as if for the first time.`
          notify(session, 'problem', words)
        }
        return null
      }
    },
    follow(id, fingerprint, fileName) {
      if ([...followed.values()].some((frame) => frame.fingerprint === fingerprint)) {
        const words = `“${fileName}” stands in the roll twice. Kept for the next time is whichever of the two changes last.`
        notify(session, 'problem', words)
      }
      followed.set(id, { fingerprint, fileName, written: null })
      if (held.has(fingerprint)) followed.get(id)!.written = editOf(id)
      onChange()
    },
    adoptTables(tables) {
      share(tables)
      const keep = ([hash, table]: [string, NamedTable]) => store.keepTable(hash, table).catch(complain)
      Object.entries(tables).forEach(keep)
    },
    async recallTables() {
      const kept = await store.tables().catch(() => ({}))
      const news = Object.entries(kept).filter(([hash]) => !known.has(hash))
      if (news.length > 0) share(Object.fromEntries(news))
    },
    async forgetTable(hash) {
      known.delete(hash)
      supplies.share(lutSupply(hash), null)
      listKnown()
      await store.forgetTable(hash).catch(complain)
    },
    async tablesOf(steps) {
      const lookUp = (hash: string) => known.get(hash) ?? store.table(hash).catch(() => undefined)
      const found = await Promise.all(tableIdsOf(steps).map(async (hash) => [hash, await lookUp(hash)] as const))
      return Object.fromEntries(found.filter((entry): entry is [string, NamedTable] => entry[1] !== undefined))
    },
    countKept: async () => store.countEdits().catch(() => 0),
    async forgetKept() {
      clearTimeout(timer)
      timer = undefined
      await store.forgetAll().catch(complain)
      held.clear()
      for (const [id, frame] of followed) frame.written = editOf(id)
    },
  }
}
