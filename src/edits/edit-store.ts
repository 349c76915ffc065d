// The edits of all frames: per frame id a chain with its history, and the marks. Plain data, JSON-safe, never pixels; the probe
// stays outside, and so do marks stay outside history, because keeping a candidate changes no picture.
import { createStore, type StoreApi } from 'zustand/vanilla'
import type { Chain } from '../operations/step.ts'
import { begin, cancel, change, end, type History, record, redo, startHistory, undo } from './history.ts'
import type { Marks } from './marks.ts'

interface Edits {
  readonly frames: Readonly<Record<string, History>>
  readonly marks: Readonly<Record<string, Marks>>
}

export interface EditStore {
  readonly store: StoreApi<Edits>
  /** The history of a frame, or undefined while it has none. */
  history(frameId: string): History | undefined
  /** Gives a frame its chain and a fresh history, replacing what it had; its marks stay. */
  open(frameId: string, chain: Chain): void
  /** The marks of a frame in the order of its board; none for an unknown frame. */
  marks(frameId: string): Marks
  changeMarks(frameId: string, edit: (marks: Marks) => Marks): void
  /** Forgets a frame. */
  close(frameId: string): void
  /** One named change; within a gesture it ends the gesture first. */
  apply(frameId: string, name: string, edit: (chain: Chain) => Chain): void
  beginGesture(frameId: string, name: string): void
  /** Changes the chain within the open gesture. */
  changeGesture(frameId: string, edit: (chain: Chain) => Chain): void
  endGesture(frameId: string): void
  cancelGesture(frameId: string): void
  undo(frameId: string): void
  redo(frameId: string): void
}

const noMarks: Marks = []

/** An empty store. Every command throws a RangeError for a frame that was not opened; `edit` may throw to leave all as it was. */
export function createEditStore(): EditStore {
  const store = createStore<Edits>(() => ({ frames: {}, marks: {} }))

  function update(frameId: string, next: (history: History) => History): void {
    const { frames } = store.getState()
    const history = frames[frameId]
    if (!history) throw new RangeError(`The frame “${frameId}” has no edits yet: open it first.`)
    const changed = next(history)
    if (changed !== history) store.setState({ frames: { ...frames, [frameId]: changed } })
  }

  return {
    store,
    history: (frameId) => store.getState().frames[frameId],
    open: (frameId, chain) =>
      store.setState(({ frames }) => ({ frames: { ...frames, [frameId]: startHistory(chain) } })),
    close: (frameId) =>
      store.setState((edits) => {
        const { [frameId]: closed, ...frames } = edits.frames
        const { [frameId]: _marks, ...marks } = edits.marks
        return closed ? { frames, marks } : edits
      }),
    marks: (frameId) => store.getState().marks[frameId] ?? noMarks,
    changeMarks: (frameId, edit) =>
      store.setState(({ marks }) => ({ marks: { ...marks, [frameId]: edit(marks[frameId] ?? noMarks) } })),
    apply: (frameId, name, edit) => update(frameId, (history) => record(history, name, edit(history.chain))),
    beginGesture: (frameId, name) => update(frameId, (history) => begin(history, name)),
    changeGesture: (frameId, edit) => update(frameId, (history) => change(history, edit(history.chain))),
    endGesture: (frameId) => update(frameId, end),
    cancelGesture: (frameId) => update(frameId, cancel),
    undo: (frameId) => update(frameId, undo),
    redo: (frameId) => update(frameId, redo),
  }
}
