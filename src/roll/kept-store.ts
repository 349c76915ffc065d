// What the browser keeps between sessions, in a database of its own: edits by the fingerprint of the file they were made on,
// colour tables by the hash of their content, and colour maps, all under one key. Photographs are never kept.
import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import type { NamedTable } from './edit.ts'
import type { EditContent } from './edit-schema.ts'

/** Version of the stores below; what lies in them counts versions of its own. */
const storesVersion = 2
const mapsKey = 'all'

interface Kept extends DBSchema {
  edits: { key: string; value: unknown }
  tables: { key: string; value: NamedTable }
  maps: { key: typeof mapsKey; value: unknown }
}

/** Every promise rejects with a DOMException where the browser gives no storage, or no more of it. */
export interface KeptStore {
  /** The content kept for a file, unchecked, or undefined. */
  edit(fingerprint: string): Promise<unknown>
  keepEdit(fingerprint: string, content: EditContent): Promise<void>
  table(hash: string): Promise<NamedTable | undefined>
  keepTable(hash: string, table: NamedTable): Promise<void>
  /** All tables by their hash. */
  tables(): Promise<Readonly<Record<string, NamedTable>>>
  forgetTable(hash: string): Promise<void>
  /** The content of the colour maps kept, unchecked, or undefined. */
  maps(): Promise<unknown>
  keepMaps(content: object): Promise<void>
  /** How many files edits are kept for. */
  countEdits(): Promise<number>
  forgetAll(): Promise<void>
}

function open(): Promise<IDBPDatabase<Kept>> {
  return openDB<Kept>('rimeleaf', storesVersion, {
    upgrade(database, before) {
      if (before < 1) {
        database.createObjectStore('edits')
        database.createObjectStore('tables')
      }
      database.createObjectStore('maps')
    },
    // Another page of a newer version must not wait for this one.
    blocking: (_current, _blocked, event) => (event.target as IDBDatabase).close(),
  })
}

export function createKeptStore(): KeptStore {
  let opened: IDBPDatabase<Kept> | null = null
  let opening: Promise<IDBPDatabase<Kept>> | null = null

  async function openOnce(): Promise<IDBPDatabase<Kept>> {
    opening ??= open()
    try {
      opened = await opening
    } catch (reason) {
      opening = null
      throw reason
    }
    return opened
  }

  /** Puts and commits at once where the database is open, so that a page on its way out still gets it written. */
  async function put<Store extends 'edits' | 'tables' | 'maps'>(
    store: Store,
    key: Kept[Store]['key'],
    value: Kept[Store]['value'],
  ): Promise<void> {
    const transaction = (opened ?? (await openOnce())).transaction(store, 'readwrite')
    const putting = transaction.store.put(value, key)
    transaction.commit()
    await Promise.all([putting, transaction.done])
  }

  return {
    edit: async (fingerprint) => (await openOnce()).get('edits', fingerprint),
    keepEdit: (fingerprint, content) => put('edits', fingerprint, content),
    table: async (hash) => (await openOnce()).get('tables', hash),
    keepTable: (hash, table) => put('tables', hash, table),
    async tables() {
      const { store } = (await openOnce()).transaction('tables')
      const [hashes, tables] = await Promise.all([store.getAllKeys(), store.getAll()])
      return Object.fromEntries(hashes.map((hash, i) => [hash, tables[i]]))
    },
    forgetTable: async (hash) => (await openOnce()).delete('tables', hash),
    maps: async () => (await openOnce()).get('maps', mapsKey),
    keepMaps: (content) => put('maps', mapsKey, content),
    countEdits: async () => (await openOnce()).count('edits'),
    async forgetAll() {
      const transaction = (await openOnce()).transaction(['edits', 'tables'], 'readwrite')
      await Promise.all([
        transaction.objectStore('edits').clear(),
        transaction.objectStore('tables').clear(),
        transaction.done,
      ])
    },
  }
}
