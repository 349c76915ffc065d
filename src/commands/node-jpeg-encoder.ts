// The JPEG encoder fetches its own WebAssembly in a page; Node has to hand it the file.
import { readFile } from 'node:fs/promises'
import { createRequire } from 'node:module'
import { init } from '@jsquash/jpeg/encode.js'

/** To be awaited once before the first JPEG is written under Node. */
export async function prepareJpegEncoder(): Promise<void> {
  const path = createRequire(import.meta.url).resolve('@jsquash/jpeg/codec/enc/mozjpeg_enc.wasm')
  await init({ wasmBinary: await readFile(path) } as Parameters<typeof init>[0])
}
