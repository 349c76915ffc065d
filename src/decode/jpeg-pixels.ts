// Pixels of a JPEG file by the codec that also writes them. It ends a damaged picture in grey and says so in a message only;
// both come back from here.
import decode, { init } from '@jsquash/jpeg/decode.js'

export interface JpegPixels {
  readonly width: number
  readonly height: number
  /** Encoded codes, four a pixel, the fourth without meaning. */
  readonly rgba: Uint8ClampedArray
  /** What the codec complained of and survived. */
  readonly messages: readonly string[]
}

let started = false
let messages: string[] = []

/** Readies the codec; `wasmBinary` is needed where there is no fetch for it, as in Node. */
export async function prepareJpegDecoder(wasmBinary?: Uint8Array): Promise<void> {
  if (started) return
  started = true
  const options = { wasmBinary, printErr: (line: string) => messages.push(line) }
  await init(options as Parameters<typeof init>[0])
}

/** @throws Error with what the codec complained of */
export async function jpegPixels(bytes: Uint8Array<ArrayBuffer>): Promise<JpegPixels> {
  await prepareJpegDecoder()
  messages = []
  try {
    const { width, height, data } = await decode(bytes as unknown as ArrayBuffer)
    return { width, height, rgba: data as Uint8ClampedArray, messages }
  } catch (thrown) {
    throw new Error([...messages, String(thrown)].join('; '), { cause: thrown })
  }
}
