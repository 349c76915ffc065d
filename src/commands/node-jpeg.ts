// The JPEG codec fetches its own WebAssembly in a page; Node has to hand it the files.
import { readFile } from 'node:fs/promises'
import { createRequire } from 'node:module'
import { init } from '@jsquash/jpeg/encode.js'
import { prepareJpegDecoder } from '../decode/jpeg-pixels.ts'

const partOf = (name: string) => readFile(createRequire(import.meta.url).resolve(`@jsquash/jpeg/codec/${name}.wasm`))

/** To be awaited once before the first JPEG is written under Node. */
export async function prepareJpegEncoder(): Promise<void> {
  await init({ wasmBinary: await partOf('enc/mozjpeg_enc') } as Parameters<typeof init>[0])
}

/** To be awaited before the first JPEG is opened under Node. */
export async function prepareNodeJpegDecoder(): Promise<void> {
  await prepareJpegDecoder(await partOf('dec/mozjpeg_dec'))
}
