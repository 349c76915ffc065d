// The worker that decodes: a file in, its embedded preview at once, then the frame, whose pixels are handed over, and last its
// readings. Reading, unpacking, turning, the overview and the fingerprint all happen here, so that the page never waits.
import { expose, type ProxyMarked, releaseProxy, type Remote, transfer } from 'comlink'
import { wordsOf } from '../text/thrown.ts'
import { laterReadings } from '../analysis/frame-readings.ts'
import type { Frame, FrameReadings } from '../frame/frame.ts'
import { DecodeError, type DecodeFailure } from './decode-error.ts'
import { decodeFrame } from './decode-frame.ts'
import { type LibRaw, startLibRaw } from './libraw.ts'

/** Errors lose their class on the way out of a worker, so failures are answers. */
export type DecodeAnswer = { readonly readings: FrameReadings } | { readonly failure: DecodeFailure }
/** Takes what comes before the answer: the embedded JPEG, if there is one, and the frame. */
export interface DecodeReceiver {
  preview(jpeg: Blob): void
  frame(frame: Frame): void
}
export type DecodeFile = (file: File, receiver: DecodeReceiver & ProxyMarked) => Promise<DecodeAnswer>

// At once, so that a worker started ahead of its first file is ready for it.
const starting = startLibRaw()
starting.catch(() => undefined)

async function readBytes(file: File): Promise<Uint8Array<ArrayBuffer>> {
  try {
    return new Uint8Array(await file.arrayBuffer())
  } catch {
    throw new DecodeError(file.name, { kind: 'unreadable' })
  }
}

async function startDecoder(fileName: string): Promise<LibRaw> {
  const libraw = await starting.catch(() => {
    throw new DecodeError(fileName, { kind: 'no decoder' })
  })
  if (!libraw) throw new DecodeError(fileName, { kind: 'no shared memory' })
  return libraw
}

/** What is handed over instead of being copied. */
function pixelBuffers({ sensor, overview, cells }: Frame): ArrayBuffer[] {
  const arrays = [sensor.codes, overview.rgba, cells.rgb, cells.valid, cells.unsmoothed, cells.unclipped]
  return arrays.map(({ buffer }) => buffer as ArrayBuffer)
}

async function decodeFile(file: File, receiver: Remote<DecodeReceiver & ProxyMarked>): Promise<DecodeAnswer> {
  try {
    const [libraw, bytes] = await Promise.all([startDecoder(file.name), readBytes(file)])
    const frame = await decodeFrame(libraw, {
      fileName: file.name,
      bytes,
      onPreview: (jpeg) => void receiver.preview(new Blob([jpeg], { type: 'image/jpeg' })),
    })
    const read = laterReadings(frame)
    const received = receiver.frame(transfer(frame, pixelBuffers(frame)))
    const readings = read()
    await received
    return { readings }
  } catch (thrown) {
    if (thrown instanceof DecodeError) return { failure: thrown.failure }
    const words = wordsOf(thrown)
    return { failure: { kind: /memory|allocation/i.test(words) ? 'memory' : 'other', words } }
  } finally {
    receiver[releaseProxy]()
  }
}

expose(decodeFile)
