// The decoder in Node, for commands and tests: its program is read from the package, since there is nothing to fetch it with.
import { readFile } from 'node:fs/promises'
import { createRequire } from 'node:module'
import { type LibRaw, startLibRaw } from './libraw.ts'

/** Starts the decoder in Node. @throws Error where Node lacks shared memory, which no supported version does */
export async function startLibRawInNode(): Promise<LibRaw> {
  const path = createRequire(import.meta.url).resolve('libraw-wasm/dist/libraw.wasm')
  const libraw = await startLibRaw(await readFile(path))
  if (!libraw) throw new Error('This version of Node gives no shared memory to the raw decoder; use Node 20 or later.')
  return libraw
}
