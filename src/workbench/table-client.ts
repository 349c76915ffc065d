// The page's side of the worker for colour tables: one worker for each piece of work, gone when it is done or given up.
import { type Remote, wrap } from 'comlink'
import type { TableWorker } from './table-worker.ts'

/** Runs a piece of work in a worker of its own. @throws Error of the work, or the signal's reason */
export async function inTableWorker<T>(
  work: (remote: Remote<TableWorker>) => Promise<T>,
  signal?: AbortSignal,
): Promise<T> {
  signal?.throwIfAborted()
  const worker = new Worker(new URL('./table-worker.ts', import.meta.url), { type: 'module' })
  const ended = new Promise<never>((_, reject) => {
    worker.addEventListener('error', () => reject(new Error('The browser gave up. Close other pages and try again.')))
    signal?.addEventListener('abort', () => reject(signal.reason))
  })
  ended.catch(() => undefined)
  try {
    return await Promise.race([work(wrap<TableWorker>(worker)), ended])
  } finally {
    worker.terminate()
  }
}
