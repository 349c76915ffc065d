// The page's side of the decode worker: files go in one after the other, each can be given up. The worker cannot be
// interrupted within a file, so giving up the one at work ends the worker; so does a failed allocation, after which its
// memory is not to be trusted.
import { proxy, wrap } from 'comlink'
import type { Frame } from '../frame/frame.ts'
import { DecodeError } from './decode-error.ts'
import type { DecodeAnswer, DecodeFile } from './decode-worker.ts'

interface DecodeOptions {
  /** Called once, before the frame comes, where the camera embedded a JPEG; its EXIF carries the orientation. */
  readonly onPreview?: (jpeg: Blob) => void
  readonly signal?: AbortSignal
}

export interface DecodeClient {
  /** @throws DecodeError with a sentence for people, or the signal's reason */
  decode(file: File, options?: DecodeOptions): Promise<Frame>
  /** Ends the worker; the next file starts another. */
  close(): void
}

interface Running {
  readonly worker: Worker
  readonly decodeFile: (...order: Parameters<DecodeFile>) => Promise<DecodeAnswer>
  /** Never resolves; rejects when the worker itself breaks. */
  readonly broken: Promise<never>
}

function startWorker(): Running {
  const worker = new Worker(new URL('./decode-worker.ts', import.meta.url), { type: 'module' })
  const broken = new Promise<never>((_, reject) => worker.addEventListener('error', () => reject(new Error('broken'))))
  broken.catch(() => undefined)
  return { worker, decodeFile: wrap<DecodeFile>(worker) as Running['decodeFile'], broken }
}

interface Abort {
  /** Never resolves; rejects with the reason when the signal is given. */
  readonly promise: Promise<never>
  forget(): void
}

function listenFor(signal: AbortSignal | undefined): Abort {
  let listener = () => {}
  const promise = new Promise<never>((_, reject) => {
    listener = () => reject(signal?.reason)
    if (signal?.aborted) listener()
    signal?.addEventListener('abort', listener)
  })
  promise.catch(() => undefined)
  return { promise, forget: () => signal?.removeEventListener('abort', listener) }
}

/** A client whose worker starts with the first file. */
export function startDecodeClient(): DecodeClient {
  let running: Running | null = null
  let line: Promise<unknown> = Promise.resolve()

  function close(): void {
    running?.worker.terminate()
    running = null
  }

  async function decodeNow(file: File, { onPreview, signal }: DecodeOptions, abort: Abort): Promise<Frame> {
    signal?.throwIfAborted()
    running ??= startWorker()
    const { decodeFile, broken } = running
    const work = decodeFile(file, onPreview ? proxy(onPreview) : null)
    const answer = await Promise.race([work, broken, abort.promise]).catch(() => {
      close()
      signal?.throwIfAborted()
      throw new DecodeError(file.name, { kind: 'no decoder' })
    })
    if ('frame' in answer) return answer.frame
    if (answer.failure.kind === 'memory') close()
    throw new DecodeError(file.name, answer.failure)
  }

  return {
    close,
    decode(file, options = {}) {
      const abort = listenFor(options.signal)
      const turn = line.then(() => decodeNow(file, options, abort))
      line = turn.catch(() => undefined)
      return Promise.race([turn, abort.promise]).finally(abort.forget)
    },
  }
}
