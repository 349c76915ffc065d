// Gives the JPEG encoder its code from the installed package: outside a browser it cannot fetch it.
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { provideJpegEncoder } from './dng/preview-jpeg.ts'

/** Call once before the first frame is made under Node. */
export function provideJpegEncoderFromDisk(): void {
  const path = createRequire(import.meta.url).resolve('@jsquash/jpeg/codec/enc/mozjpeg_enc.wasm')
  provideJpegEncoder(new WebAssembly.Module(readFileSync(path)))
}
