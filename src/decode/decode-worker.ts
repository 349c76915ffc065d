// The worker that decodes: a file in, its embedded preview at once, then the frame, whose pixels are handed over. Reading,
// unpacking, turning, the overview and the fingerprint all happen here, so that the page never waits.
import { expose, type ProxyMarked, releaseProxy, type Remote, transfer } from 'comlink'
import type { Frame } from '../frame/frame.ts'
import { DecodeError, type DecodeFailure } from './decode-error.ts'
import { decodeFrame } from './decode-frame.ts'
import { type LibRaw, startLibRaw } from './libraw.ts'

/** Errors lose their class on the way out of a worker, so failures are answers. */
export type DecodeAnswer = { readonly frame: Frame } | { readonly failure: DecodeFailure }
export type ReceivePreview = (jpeg: Blob) => void
export type DecodeFile = (file: File, receive: (ReceivePreview & ProxyMarked) | null) => Promise<DecodeAnswer>

let starting: Promise<LibRaw | null> | undefined

async function readBytes(file: File): Promise<Uint8Array<ArrayBuffer>> {
  try {
    return new Uint8Array(await file.arrayBuffer())
  } catch {
    throw new DecodeError(file.name, { kind: 'unreadable' })
  }
}

async function startDecoder(fileName: string): Promise<LibRaw> {
  starting ??= startLibRaw()
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

async function decodeFile(file: File, receive: Remote<ReceivePreview> | null): Promise<DecodeAnswer> {
  try {
    const [libraw, bytes] = await Promise.all([startDecoder(file.name), readBytes(file)])
    const frame = await decodeFrame(libraw, {
      fileName: file.name,
      bytes,
      onPreview: (jpeg) => void receive?.(new Blob([jpeg], { type: 'image/jpeg' })),
    })
    return transfer({ frame }, pixelBuffers(frame))
  } catch (thrown) {
    if (thrown instanceof DecodeError) return { failure: thrown.failure }
    const words = thrown instanceof Error ? thrown.message : String(thrown)
    return { failure: { kind: /memory|allocation/i.test(words) ? 'memory' : 'other', words } }
  } finally {
    receive?.[releaseProxy]()
  }
}

expose(decodeFile)
