// JPEG and TIFF files made by libvips from one gentle picture, for tests of opening them; what vips reads is the reference.
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { say } from './outside-tools.ts'

export const size = { width: 96, height: 64 }

/** Encoded codes, RGB interleaved: slopes of three colours with all codes from 0 to the largest in them. */
export function slopes(most: number): number[] {
  const { width, height } = size
  return Array.from({ length: width * height }, (_, i) => {
    const [x, y] = [(i % width) / (width - 1), Math.floor(i / width) / (height - 1)]
    return [x, y, (x + 2 * y) / 3].map((share) => Math.round(share * most))
  }).flat()
}

/** A picture of libvips in `folder` with these codes, `bands` a pixel; its path. */
export function vipsPicture(folder: string, name: string, codes: number[], bands: number, bits: 8 | 16): string {
  const raw = join(folder, `${name}.raw`)
  const path = join(folder, `${name}.v`)
  const bytes = bits === 8 ? Uint8Array.from(codes) : new Uint8Array(Uint16Array.from(codes).buffer)
  writeFileSync(raw, bytes)
  const { width, height } = size
  const format = bits === 8 ? 'uchar' : 'ushort'
  const meaning = bands === 1 ? (bits === 8 ? 'b-w' : 'grey16') : bits === 8 ? 'srgb' : 'rgb16'
  const words = ['rawload', raw, path, `${width}`, `${height}`, `${bands}`]
  say('vips', [...words, '--format', format, '--interpretation', meaning])
  return path
}

/** The codes that libvips reads from a file. */
export function vipsCodes(path: string, bits: 8 | 16): Uint8Array | Uint16Array {
  say('vips', ['rawsave', path, `${path}.raw`])
  const bytes = Uint8Array.from(readFileSync(`${path}.raw`))
  return bits === 8 ? bytes : new Uint16Array(bytes.buffer)
}
