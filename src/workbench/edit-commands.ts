// The whole edit of the shown frame: saved to a file, taken from one, or given back to the opening chain.
import { closed, wordsOf } from '../text/thrown.ts'
import { defaultChain } from '../edits/default-chain.ts'
import type { EditStore } from '../edits/edit-store.ts'
import { mergeMarks } from '../edits/marks.ts'
import type { Chain } from '../operations/step.ts'
import type { Edit } from '../roll/edit.ts'
import { EditFileError, editFileName, readEditFile, writeEditFile } from '../roll/edit-file.ts'
import { saveFile } from './save-file.ts'
import { filterWords } from './filter-command.ts'
import type { Keeping } from './keeping.ts'
import type { ShownPicture } from './picture.ts'
import { notify, type SessionStore } from './session-store.ts'
import type { Workbench } from './workbench.ts'

export type EditCommands = Pick<Workbench, 'saveEdit' | 'loadEdit' | 'startAfresh'>

interface EditContext {
  readonly session: SessionStore
  readonly edits: EditStore
  readonly keeping: Keeping
  /** States the filter of an entry and leaves its chain as it is. */
  noteFilter(id: string, filterNm: number | null): void
  shown(): ShownPicture | null
}

export function createEditCommands({ session, edits, keeping, noteFilter, shown }: EditContext): EditCommands {
  function replaceChain(id: string, name: string, chain: Chain): void {
    edits.apply(id, name, () => chain)
    const { selectedStepId } = session.getState()
    if (!chain.some((step) => step.id === selectedStepId)) session.setState({ selectedStepId: chain[0].id })
  }

  /** Marks of another frame keep their gains, but not their places. */
  function addMarks(id: string, { fingerprint }: ShownPicture['frame'], { marks, madeOn }: Edit): number {
    const elsewhere = madeOn !== undefined && madeOn.fingerprint !== fingerprint
    const before = edits.marks(id).length
    edits.changeMarks(id, (own) => mergeMarks(own, elsewhere ? marks.map((mark) => ({ ...mark, place: null })) : marks))
    return edits.marks(id).length - before
  }

  /** Takes the filter over where none was stated; says where the two differ. */
  function agreeOnFilter(id: string, { filterNm }: Edit): string {
    const stated = session.getState().entries.find((entry) => entry.id === id)?.statedFilterNm
    if (filterNm === undefined || filterNm === stated) return ''
    if (stated !== undefined)
      return ` It was made for ${filterWords(filterNm)}; this frame is stated as ${filterWords(stated)}.`
    noteFilter(id, filterNm)
    return ` Its filter is stated for this frame.`
  }

  return {
    async saveEdit() {
      const picture = shown()
      const edit = picture && keeping.editOf(picture.id)
      if (!picture || !edit) return
      const name = editFileName(picture.frame.fileName)
      const content = keeping.tablesOf(edit.chain).then((tables) => writeEditFile({ ...edit, tables }))
      await saveFile(session, { name, description: 'Edit file', mediaType: 'application/json', content })
    },

    async loadEdit(file) {
      const picture = shown()
      if (!picture) {
        const words = `“${file.name}” belongs to a frame, and none is shown. Open a frame first, then load it again.`
        return notify(session, 'problem', words)
      }
      try {
        const edit = await readEditFile(await file.text(), `“${file.name}”`)
        keeping.adoptTables(edit.tables)
        replaceChain(picture.id, `Edit from ${file.name}`, edit.chain)
        const added = addMarks(picture.id, picture.frame, edit)
        const marks = added === 0 ? '' : ` It brought ${added === 1 ? '1 mark' : `${added} marks`}.`
        const words = `This frame has the edit of “${file.name}” now; undo takes its chain back.`
        notify(session, 'note', words + marks + agreeOnFilter(picture.id, edit))
      } catch (reason) {
        const words =
          reason instanceof EditFileError ? reason.message : `“${file.name}” cannot be read: ${closed(wordsOf(reason))}`
        notify(session, 'problem', words)
      }
    },

    startAfresh() {
      const picture = shown()
      if (picture) replaceChain(picture.id, 'Back to the opening chain', defaultChain(picture.facts))
    },
  }
}
