// Exporting the shown frame: asks for the file while the press is still being handled, then leaves the work to a worker.
import { closed, wordsOf } from '../text/thrown.ts'
import type { EditStore } from '../edits/edit-store.ts'
import { chooseDestination, downloadFile } from '../export/destination.ts'
import { exportedName } from '../export/exported-name.ts'
import { removeIfEmpty } from '../export/file-handle-sink.ts'
import { exportInWorker } from './export-client.ts'
import type { ChainPlanes } from './chain-planes.ts'
import type { ShownPicture } from './picture.ts'
import { notify, type SessionStore } from './session-store.ts'
import type { SupplyStore } from './supply-store.ts'
import type { TaskList } from './tasks.ts'
import type { Workbench } from './workbench.ts'

interface ExportContext {
  readonly session: SessionStore
  readonly edits: EditStore
  readonly tasks: TaskList
  readonly supplies: SupplyStore
  readonly planes: ChainPlanes
  shown(): ShownPicture | null
}

/** What comes of work that cannot be interrupted, or the signal's reason as soon as it is given. */
function unlessAborted<T>(work: Promise<T>, signal: AbortSignal): Promise<T> {
  const aborted = new Promise<never>((_, reject) => {
    signal.addEventListener('abort', () => reject(signal.reason), { once: true })
  })
  return Promise.race([work, aborted])
}

export function createExportCommand({
  session,
  edits,
  tasks,
  supplies,
  planes,
  shown,
}: ExportContext): Workbench['exportShown'] {
  return async function exportShown(settings) {
    const picture = shown()
    const chain = picture && edits.history(picture.id)?.chain
    if (!picture || !chain) return
    const { sensor, metadata, fileName } = picture.frame
    const name = exportedName(fileName, settings.format)
    const complain = (reason: unknown) =>
      notify(session, 'problem', `“${name}” was not exported: ${closed(wordsOf(reason))}`)

    const destination = await chooseDestination(name, settings.format).catch(complain)
    if (!destination) return
    const task = tasks.begin(`Exporting ${name}`, { cancellable: true })
    try {
      const { facts, id } = picture
      await unlessAborted(planes.ready(picture, chain), task.signal)
      const order = { sensor, facts, metadata, chain, supplies: supplies.of(id), settings, destination }
      const file = await exportInWorker(order, task.progress, task.signal)
      if (file) await downloadFile(file, name, settings.format)
      notify(session, 'note', `“${destination === 'download' ? name : destination.name}” is written.`)
    } catch (reason) {
      if (destination !== 'download') await removeIfEmpty(destination)
      if (!task.signal.aborted) complain(reason)
    } finally {
      task.end()
    }
  }
}
