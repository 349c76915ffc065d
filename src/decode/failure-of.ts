// From LibRaw's codes to our reasons (LibRaw_errors and LibRaw_exceptions in LibRaw's libraw_const.h, from memory).
import type { DecodeFailure } from './decode-error.ts'
import type { LibRaw, LibRawMetadata } from './libraw.ts'

const kinds: Record<number, 'memory' | 'truncated' | 'damaged' | 'unsupported packing' | 'not raw' | 'too big'> = {
  [-2]: 'not raw',
  [-100007]: 'memory',
  [-100008]: 'damaged',
  [-100009]: 'truncated',
  [-100012]: 'too big',
  [-100013]: 'memory',
  1: 'memory',
  2: 'unsupported packing',
  3: 'damaged',
  4: 'truncated',
  5: 'damaged',
  8: 'damaged',
  9: 'damaged',
  10: 'too big',
  11: 'memory',
  12: 'unsupported packing',
}

/** Bytes looked at to tell text from a picture: any raw file's head holds zeros or codes of control (our choice). */
const textHead = 4096
const isText = (bytes: Uint8Array) =>
  bytes.subarray(0, textHead).every((byte) => byte >= 0x20 || byte === 0x09 || byte === 0x0a || byte === 0x0d)

/** Why `bytes` could not be opened or unpacked; `metadata` where opening had succeeded. */
export function failureOf(
  libraw: LibRaw,
  thrown: unknown,
  bytes: Uint8Array,
  metadata?: LibRawMetadata,
): DecodeFailure {
  const said = libraw.explain(thrown)
  if (!metadata) {
    if (bytes.length === 0) return { kind: 'empty' }
    if (isText(bytes)) return { kind: 'not raw' }
  }
  if ('words' in said) {
    // The runtime aborts in words when its memory cannot grow.
    return /memory|OOM/i.test(said.words) ? { kind: 'memory' } : { kind: 'other', words: said.words }
  }
  const kind = kinds[said.code]
  if (kind === 'too big') return { kind, width: metadata?.raw_width ?? 0, height: metadata?.raw_height ?? 0 }
  return kind ? { kind } : { kind: 'other', words: `error ${said.code}` }
}
