// The small picture inside the raw file, as the camera itself would have rendered it: daylight balance, nothing exchanged.
// That is why it looks red, and why the workbench never judges colour by it.
import encodeJpeg, { init } from '@jsquash/jpeg/encode.js'
import type { Body } from '../sensor/body.ts'
import type { Exposure } from '../sensor/expose.ts'
import type { Mosaic, PreviewJpeg } from './dng-file.ts'

const longestSide = 1024
let ready: Promise<unknown> | undefined

/** Outside a browser the encoder cannot fetch its own code: hand over the compiled module once before the first frame. */
export function provideJpegEncoder(module: WebAssembly.Module): void {
  ready = init(module)
}

/** Averages whole filter cells of the mosaic into a JPEG of at most 1024 pixels, in sensor orientation. */
export async function renderPreview(
  { codes, raw, picture }: Mosaic,
  body: Body,
  exposure: Exposure,
): Promise<PreviewJpeg> {
  const cell = 2 * Math.max(1, Math.ceil(Math.max(picture.width, picture.height) / longestSide / 2))
  const width = Math.floor(picture.width / cell)
  const height = Math.floor(picture.height / cell)
  const rgba = new Uint8ClampedArray(width * height * 4).fill(255)
  const colour = [...exposure.phase].map((letter) => 'RGB'.indexOf(letter))
  const gain = body.daylightNeutral.map((v) => 1 / v)
  const sum = [0, 0, 0]
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      sum.fill(0)
      for (let j = 0; j < cell; j++) {
        const at = (body.border.top + y * cell + j) * raw.width + body.border.left + x * cell
        for (let i = 0; i < cell; i++) {
          const place = (j & 1) * 2 + (i & 1)
          const black = exposure.black[place]
          const weight = colour[place] === 1 ? 2 : 4
          sum[colour[place]] += (weight * (codes[at + i] - black)) / (body.white - black)
        }
      }
      for (let c = 0; c < 3; c++) {
        const v = Math.min(1, Math.max(0, (sum[c] / (cell * cell)) * gain[c]))
        rgba[(y * width + x) * 4 + c] = 255 * (v <= 0.0031308 ? 12.92 * v : 1.055 * v ** (1 / 2.4) - 0.055)
      }
    }
  }
  await ready
  const encoded = await encodeJpeg({ data: rgba, width, height, colorSpace: 'srgb' } as ImageData, {
    quality: 82,
    progressive: false,
    baseline: true,
  })
  return { bytes: new Uint8Array(encoded), width, height }
}
