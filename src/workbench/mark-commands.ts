// Marks of the shown frame: candidates kept without changing the picture, until one is adopted as its neutral.
import type { EditStore } from '../edits/edit-store.ts'
import {
  addMark,
  type Mark,
  type Marks,
  moveMark,
  moveMarkGains,
  type NeutralGains,
  pinMark,
  putBackMark,
  removeMark,
  renameMark,
} from '../edits/marks.ts'
import { withProbe } from '../edits/stack.ts'
import { notify, type SessionStore } from './session-store.ts'
import type { Workbench } from './workbench.ts'

export type MarkCommands = Pick<
  Workbench,
  'markProbe' | 'addMark' | 'removeMark' | 'renameMark' | 'pinMark' | 'moveMark' | 'setMarkGains' | 'adoptNeutral'
>

export function createMarkCommands(session: SessionStore, edits: EditStore): MarkCommands {
  function onMarks(edit: (marks: Marks) => Marks): void {
    const id = session.getState().shown?.id
    if (id !== undefined) edits.changeMarks(id, edit)
  }
  const add = (gains: NeutralGains, place: Mark['place'], name?: string) =>
    onMarks((marks) => addMark(marks, gains, place, name))

  return {
    addMark: add,
    markProbe() {
      const { probe } = session.getState()
      if (probe?.neutral) add(probe.neutral, probe.place)
    },
    removeMark(markId) {
      const frameId = session.getState().shown?.id
      const index = frameId === undefined ? -1 : edits.marks(frameId).findIndex(({ id }) => id === markId)
      if (frameId === undefined || index < 0) return
      const mark = edits.marks(frameId)[index]
      edits.changeMarks(frameId, (marks) => removeMark(marks, markId))
      notify(session, 'note', `Mark “${mark.name}” left the board.`, {
        words: 'Put it back',
        act: () => edits.changeMarks(frameId, (marks) => putBackMark(marks, mark, index)),
      })
    },
    renameMark: (id, name) => onMarks((marks) => renameMark(marks, id, name)),
    pinMark: (id, pinned) => onMarks((marks) => pinMark(marks, id, pinned)),
    moveMark: (id, toIndex) => onMarks((marks) => moveMark(marks, id, toIndex)),
    setMarkGains: (id, gains) => onMarks((marks) => moveMarkGains(marks, id, gains)),
    adoptNeutral(gains, name) {
      const { shown } = session.getState()
      if (!shown) return
      edits.apply(shown.id, name, (chain) => withProbe(chain, gains))
      session.setState({ preview: null })
    },
  }
}
