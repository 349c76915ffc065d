// A few workers that pack strips side by side in the browser.
import { type Remote, transfer, wrap } from 'comlink'
import type { PackStrip } from './pack-strip.ts'

export interface StripPackers {
  /** Gives the strip to the next worker in turn; the samples are handed over. */
  readonly packStrip: PackStrip
  readonly packers: number
  close(): void
}

/** More than four gain nothing: rendering is then the slower half (our choice). */
const mostWorkers = 4

/** Two to four workers, by the machine's threads. */
export function openStripPackers(): StripPackers {
  const count = Math.min(Math.max(navigator.hardwareConcurrency, 2), mostWorkers)
  const workers = Array.from(
    { length: count },
    () => new Worker(new URL('./pack-strip-worker.ts', import.meta.url), { type: 'module' }),
  )
  const remotes: Remote<PackStrip>[] = workers.map((worker) => wrap<PackStrip>(worker))
  const failure = new Promise<never>((_, reject) => {
    for (const worker of workers)
      worker.addEventListener('error', ({ message }) =>
        reject(
          new Error(`The part of this page that packs files could not run${message ? `: ${message}` : ''}. Reload it.`),
        ),
      )
  })
  failure.catch(() => undefined)
  let turn = 0
  return {
    packers: count,
    packStrip: (samples, samplesPerRow) =>
      Promise.race([remotes[turn++ % count](transfer(samples, [samples.buffer]), samplesPerRow), failure]),
    close: () => workers.forEach((worker) => worker.terminate()),
  }
}
