// A minimal PNG writer (8-bit RGB, no filters) for looking at scenes while they are made. Node only.
import { crc32, deflateSync } from 'node:zlib'

function chunk(type: string, data: Uint8Array): Buffer {
  const out = Buffer.alloc(12 + data.length)
  out.writeUInt32BE(data.length, 0)
  out.write(type, 4, 'latin1')
  out.set(data, 8)
  out.writeUInt32BE(crc32(out.subarray(4, 8 + data.length)), 8 + data.length)
  return out
}

/** Encodes `rgb` (3 bytes per pixel, rows top down) as a PNG file. */
export function encodePng(rgb: Uint8Array, width: number, height: number): Buffer {
  const header = Buffer.alloc(13)
  header.writeUInt32BE(width, 0)
  header.writeUInt32BE(height, 4)
  header.set([8, 2, 0, 0, 0], 8)
  const rows = Buffer.alloc(height * (1 + width * 3))
  for (let y = 0; y < height; y++) rows.set(rgb.subarray(y * width * 3, (y + 1) * width * 3), y * (1 + width * 3) + 1)
  const signature = Buffer.from([137, 80, 78, 71, 13, 10, 26, 10])
  const body = chunk('IDAT', deflateSync(rows, { level: 4 }))
  return Buffer.concat([signature, chunk('IHDR', header), body, chunk('IEND', new Uint8Array())])
}
