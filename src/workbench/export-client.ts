// The page's side of the export worker: one worker per file, gone when the file is done.
import { proxy, wrap } from 'comlink'
import { removeIfEmpty } from '../export/file-handle-sink.ts'
import type { ExportOrder, ExportWorker } from './export-worker.ts'

/** Time a cancelled worker gets to tidy up by itself, in ms: encoding a JPEG cannot be interrupted (our choice). */
const patienceMs = 500

/**
 * Exports in a worker. Resolves with the file where it is to be downloaded, else null.
 * @throws the signal's reason when cancelled, else an Error with what went wrong; no file is left either way
 */
export async function exportInWorker(
  order: ExportOrder,
  onProgress: (fraction: number) => void,
  signal: AbortSignal,
): Promise<Blob | null> {
  signal.throwIfAborted()
  const worker = new Worker(new URL('./export-worker.ts', import.meta.url), { type: 'module' })
  const remote = wrap<ExportWorker>(worker)
  const failed = new Promise<never>((_, reject) => {
    worker.addEventListener('error', ({ message }) =>
      reject(new Error(`The export could not run${message ? `: ${message}` : ''}. Reload the page and try again.`)),
    )
    signal.addEventListener('abort', () => {
      void remote.cancel()
      setTimeout(() => reject(signal.reason), patienceMs)
    })
  })
  failed.catch(() => undefined)
  try {
    return await Promise.race([remote.run(order, proxy(onProgress)), failed])
  } catch (reason) {
    worker.terminate()
    if (order.destination !== 'download') await removeIfEmpty(order.destination)
    throw signal.aborted ? signal.reason : reason
  } finally {
    worker.terminate()
  }
}
