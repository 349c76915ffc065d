// Undo and redo of one chain as plain data. One gesture is one entry, so that a drag never fills the history; only chains enter it.
import type { Chain } from '../operations/step.ts'

/** A change by its name, with the chain that stood before it (past) or after it (future). */
interface Entry {
  readonly name: string
  readonly chain: Chain
}

export interface History {
  readonly chain: Chain
  /** Oldest first. */
  readonly past: readonly Entry[]
  /** Next redo last. */
  readonly future: readonly Entry[]
  /** A drag or a row of keystrokes under way, with the chain at its start. */
  readonly gesture: Entry | null
}

/** Entries kept; the oldest go first. A chain is a few kilobytes at most (our choice). */
const LIMIT = 300

export function startHistory(chain: Chain): History {
  return { chain, past: [], future: [], gesture: null }
}

/** Opens a gesture; one still open is ended first. */
export function begin(history: History, name: string): History {
  const settled = end(history)
  return { ...settled, gesture: { name, chain: settled.chain } }
}

/** Replaces the chain within a gesture; without one, nothing changes. */
export function change(history: History, chain: Chain): History {
  return history.gesture ? { ...history, chain } : history
}

/** Closes the gesture as one entry; without effect on the chain it leaves none. */
export function end(history: History): History {
  const { gesture, chain, past } = history
  if (!gesture) return history
  if (isSame(gesture.chain, chain)) return { ...history, gesture: null, chain: gesture.chain }
  return { chain, past: [...past, gesture].slice(-LIMIT), future: [], gesture: null }
}

/** Closes the gesture and goes back to the chain at its start. */
export function cancel(history: History): History {
  const { gesture } = history
  return gesture ? { ...history, chain: gesture.chain, gesture: null } : history
}

/** One named change at once: begin, change, end. */
export function record(history: History, name: string, chain: Chain): History {
  return end(change(begin(history, name), chain))
}

/** The name of what `undo` would take back, or null. */
export function undoName(history: History): string | null {
  return history.gesture?.name ?? history.past.at(-1)?.name ?? null
}

/** The name of what `redo` would bring back, or null. */
export function redoName(history: History): string | null {
  return history.future.at(-1)?.name ?? null
}

/** Takes the last change back; an open gesture counts as the last change. */
export function undo(history: History): History {
  const { chain, past, future } = end(history)
  const last = past.at(-1)
  if (!last) return end(history)
  return {
    chain: last.chain,
    past: past.slice(0, -1),
    future: [...future, { name: last.name, chain }],
    gesture: null,
  }
}

/** Brings back the change taken back last. */
export function redo(history: History): History {
  const { chain, past, future } = end(history)
  const next = future.at(-1)
  if (!next) return end(history)
  return {
    chain: next.chain,
    past: [...past, { name: next.name, chain }],
    future: future.slice(0, -1),
    gesture: null,
  }
}

/** Chains are JSON-safe and their steps are written in one order of keys, so their texts compare them. */
function isSame(a: Chain, b: Chain): boolean {
  return a === b || JSON.stringify(a) === JSON.stringify(b)
}
