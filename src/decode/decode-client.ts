// The page's side of the decode worker: files go in one after the other, each can be given up. The worker cannot be
// interrupted within a file, so giving up the one at work ends the worker; so does a failed allocation, after which its
// memory is not to be trusted.
import { proxy, wrap } from 'comlink'
import type { Frame, FrameReadings } from '../frame/frame.ts'
import { DecodeError } from './decode-error.ts'
import type { DecodeAnswer, DecodeFile } from './decode-worker.ts'

interface DecodeOptions {
  /** Called once, before the frame comes, where the camera embedded a JPEG; its EXIF carries the orientation. */
  readonly onPreview?: (jpeg: Blob) => void
  readonly signal?: AbortSignal
}

interface Decoded {
  readonly frame: Frame
  /** Comes after the frame; rejects as `decode` does. */
  readonly readings: Promise<FrameReadings>
}

export interface DecodeClient {
  /** @throws DecodeError with a sentence for people, or the signal's reason */
  decode(file: File, options?: DecodeOptions): Promise<Decoded>
  /** Starts the worker ahead of the first file. */
  prepare(): void
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

/** A client whose worker starts with the first file, or before. */
export function startDecodeClient(): DecodeClient {
  let running: Running | null = null
  let line: Promise<unknown> = Promise.resolve()

  function close(): void {
    running?.worker.terminate()
    running = null
  }

  /** Hands the frame to `onFrame` and stays with the worker until the readings are there too. */
  async function decodeNow(
    file: File,
    { onPreview, signal }: DecodeOptions,
    abort: Abort,
    onFrame: (frame: Frame) => void,
  ): Promise<FrameReadings> {
    signal?.throwIfAborted()
    running ??= startWorker()
    const { decodeFile, broken } = running
    const work = decodeFile(file, proxy({ preview: (jpeg: Blob) => onPreview?.(jpeg), frame: onFrame }))
    const answer = await Promise.race([work, broken, abort.promise]).catch(() => {
      close()
      signal?.throwIfAborted()
      throw new DecodeError(file.name, { kind: 'no decoder' })
    })
    if ('readings' in answer) return answer.readings
    if (answer.failure.kind === 'memory') close()
    throw new DecodeError(file.name, answer.failure)
  }

  return {
    close,
    prepare: () => void (running ??= startWorker()),
    decode(file, options = {}) {
      const abort = listenFor(options.signal)
      let onFrame: (frame: Frame) => void
      const handedOver = new Promise<Frame>((resolve) => (onFrame = resolve))
      const readings = line.then(() => decodeNow(file, options, abort, onFrame))
      line = readings.catch(() => undefined)
      const decoded = handedOver.then((frame) => ({ frame, readings }))
      const failed = readings.then(() => decoded)
      return Promise.race([decoded, failed, abort.promise]).finally(abort.forget)
    },
  }
}
