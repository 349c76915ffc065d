// The session store and the small changes to it that several commands share.
import { createStore, type StoreApi } from 'zustand/vanilla'

import type { EntryState, Notice, RollEntry, Session, Task } from './session.ts'

export type SessionStore = StoreApi<Session>

/** Radius of the first sample in sensor pixels: a disc of about 400 Bayer cells (our choice). */
const firstSampleRadiusPx = 24

export function createSessionStore(): SessionStore {
  return createStore<Session>(() => ({
    rollName: null,
    entries: [],
    shownId: null,
    shown: null,
    readings: {},
    selectedStepId: null,
    tool: 'pan',
    sampleWay: 'ring',
    sampleRadiusPx: firstSampleRadiusPx,
    probe: null,
    offers: null,
    probeTarget: null,
    reachOf: null,
    preview: null,
    divide: null,
    view: { fit: true, zoom: 1, centre: { x: 0.5, y: 0.5 } },
    clippingShown: 'none',
    supplyChanges: 0,
    tasks: [],
    notices: [],
    tables: [],
    keepsEdits: true,
    maps: [],
    screenSpace: 'srgb',
    graphicsLimit: null,
  }))
}

export function changeEntry(store: SessionStore, id: string, change: Partial<RollEntry>): void {
  store.setState((session) => ({
    entries: session.entries.map((entry) => (entry.id === id ? { ...entry, ...change } : entry)),
  }))
}

/** Names the roll before entries come into it: after where all of them come from, or not at all. */
export function nameRoll(store: SessionStore, origin: string | null): void {
  store.setState(({ entries, rollName }) => ({
    rollName: entries.length === 0 || rollName === origin ? origin : null,
  }))
}

export function setEntryState(store: SessionStore, id: string, state: EntryState): void {
  changeEntry(store, id, { state })
}

/**
 * Shows a message. The same text is not shown twice at once, unless it brings an answer of its own; a note makes way for the next
 * message, a problem stays.
 */
export function notify(store: SessionStore, tone: Notice['tone'], text: string, answer?: Notice['answer']): void {
  store.setState((session) => {
    if (!answer && session.notices.some((notice) => notice.text === text)) return session
    const staying = session.notices.filter((notice) => notice.tone === 'problem')
    return { notices: [...staying, { id: crypto.randomUUID(), tone, text, answer }] }
  })
}

export function dismissNotice(store: SessionStore, id: string): void {
  store.setState((session) => ({ notices: session.notices.filter((notice) => notice.id !== id) }))
}

export function setTasks(store: SessionStore, change: (tasks: readonly Task[]) => readonly Task[]): void {
  store.setState((session) => ({ tasks: change(session.tasks) }))
}
