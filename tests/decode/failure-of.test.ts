// Codes of the decoder that no file here provokes: its memory giving out, in each of the ways it says so.
import { describe, expect, it } from 'vitest'
import { failureOf } from '../../src/decode/failure-of.ts'
import type { LibRaw, LibRawMetadata } from '../../src/decode/libraw.ts'

const bytes = new Uint8Array([1, 2, 3])
const metadata = { raw_width: 60, raw_height: 40 } as LibRawMetadata
const failure = (said: ReturnType<LibRaw['explain']>) =>
  failureOf({ explain: () => said } as unknown as LibRaw, null, bytes, metadata)

describe('memory', () => {
  // LibRaw_errors and LibRaw_exceptions of libraw_const.h (from memory); words as the runtime aborts with them.
  it.each([
    { said: { code: 1 } },
    { said: { code: 11 } },
    { said: { code: -100007 } },
    { said: { words: 'Aborted(OOM). Build with -sASSERTIONS for more info.' } },
    { said: { words: 'WebAssembly.Memory.grow(): Maximum memory size exceeded' } },
  ])('$said', ({ said }) => expect(failure(said)).toEqual({ kind: 'memory' }))
})

it('text is no raw file, whatever the decoder stumbled over', () => {
  const opened = (content: Uint8Array) =>
    failureOf({ explain: () => ({ code: -100008 }) } as unknown as LibRaw, null, content)
  expect(opened(new TextEncoder().encode('Frame 3: no filter.\r\n\tcloudy, später sun\n'))).toEqual({ kind: 'not raw' })
  expect(opened(new TextEncoder().encode('II*\0Frame 3'))).toEqual({ kind: 'damaged' })
})

it('anything unheard of keeps its words', () => {
  expect(failure({ code: 7 })).toEqual({ kind: 'other', words: 'error 7' })
  expect(failure({ words: 'unreachable' })).toEqual({ kind: 'other', words: 'unreachable' })
})
