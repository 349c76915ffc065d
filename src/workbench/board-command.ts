// Exporting the board: asks for the file while the press is still being handled, then draws every mark and writes the sheet.
import { closed, wordsOf } from '../text/thrown.ts'
import type { EditStore } from '../edits/edit-store.ts'
import { withProbe } from '../edits/stack.ts'
import { chooseDestination, downloadFile } from '../export/destination.ts'
import { removeIfEmpty } from '../export/file-handle-sink.ts'
import { drawBoardSheet, sheetPictureWidth } from './board-sheet.ts'
import type { ChainPlanes } from './chain-planes.ts'
import type { ShownPicture } from './picture.ts'
import { notify, type SessionStore } from './session-store.ts'
import type { TaskList } from './tasks.ts'
import type { Workbench } from './workbench.ts'

interface BoardContext {
  readonly session: SessionStore
  readonly edits: EditStore
  readonly tasks: TaskList
  readonly planes: ChainPlanes
  readonly thumbnails: Workbench['thumbnails']
  shownPicture(): ShownPicture | null
}

/** E.g. "meadow.dng", 590 → "meadow, 590 nm". */
function titleOf(fileName: string, filterNm: number | null | undefined): string {
  const name = fileName.replace(/\.[^.]*$/, '')
  return filterNm === undefined ? name : `${name}, ${filterNm === null ? 'full spectrum' : `${filterNm} nm`}`
}

export function createBoardCommand(context: BoardContext): Workbench['exportBoard'] {
  const { session, edits, tasks, planes, thumbnails } = context
  return async function exportBoard() {
    const { shown } = session.getState()
    const picture = context.shownPicture()
    const chain = shown && edits.history(shown.id)?.chain
    const marks = shown ? edits.marks(shown.id) : []
    if (!shown || !picture || !chain || marks.length === 0) return
    const name = `${shown.fileName.replace(/\.[^.]*$/, '')}-board.png`
    const complain = (reason: unknown) =>
      notify(session, 'problem', `“${name}” was not written: ${closed(wordsOf(reason))}`)

    const destination = await chooseDestination(name, 'png').catch(complain)
    if (!destination) return
    const task = tasks.begin(`Drawing ${name}`)
    try {
      await planes.ready(picture, chain)
      const chains = marks.map(({ gains }) => withProbe(chain, gains))
      const pictures = await thumbnails(chains, sheetPictureWidth)
      if (!pictures) throw new Error('Another frame was shown meanwhile. Show this one and export its board again')
      const sheet = await drawBoardSheet({ title: titleOf(shown.fileName, shown.facts.filterNm), marks, pictures })
      if (destination === 'download') await downloadFile(sheet, name, 'png')
      else await sheet.stream().pipeTo(await destination.createWritable())
      notify(session, 'note', `“${destination === 'download' ? name : destination.name}” is written.`)
    } catch (reason) {
      if (destination !== 'download') await removeIfEmpty(destination)
      complain(reason)
    } finally {
      task.end()
    }
  }
}
