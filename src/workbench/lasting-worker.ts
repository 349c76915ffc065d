// A worker that serves many calls: started with the first, and anew after it broke. A broken worker answers nobody, so whoever
// waits is told.
import { type Remote, wrap } from 'comlink'

/** Hands its worker to a piece of work and gives what comes of it. */
export type LastingWorker<T> = <R>(work: (remote: Remote<T>) => Promise<R>) => Promise<R>

/** `whenBroken` is the sentence of the Error with which calls reject when the worker cannot go on. */
export function lastingWorker<T>(start: () => Worker, whenBroken: string): LastingWorker<T> {
  let running: { readonly remote: Remote<T>; readonly broken: Promise<never> } | null = null

  function begin() {
    const worker = start()
    const broken = new Promise<never>((_, reject) =>
      worker.addEventListener('error', () => {
        running = null
        worker.terminate()
        reject(new Error(whenBroken))
      }),
    )
    broken.catch(() => undefined)
    return { remote: wrap<T>(worker), broken }
  }
  return (work) => {
    running ??= begin()
    return Promise.race([work(running.remote), running.broken])
  }
}
