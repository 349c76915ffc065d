// Develops and encodes small pictures on a thread of their own: encoding alone can hold a thread up for a tenth of a second.
import { expose } from 'comlink'
import { describe } from '../pipeline/describe.ts'
import { renderOnCpu } from '../pipeline/render-on-cpu.ts'
import type { ThumbnailOrder } from './thumbnail.ts'

/** JPEG quality of the browser's encoder, 0…1; common practice, no source. */
const quality = 0.9

/** A JPEG of the finished picture in sRGB. */
async function develop({ width, height, rgba, chain, facts, supplies }: ThumbnailOrder): Promise<Blob> {
  const description = describe(chain, facts, { space: 'srgb', supplies })
  const region = { x: 0, y: 0, width, height, frameWidth: width, frameHeight: height }
  const rgb = renderOnCpu(description, rgba, region)
  const codes = new Uint8ClampedArray(width * height * 4).fill(255)
  for (let from = 0, to = 0; from < rgb.length; from += 3, to += 4)
    for (let channel = 0; channel < 3; channel++) codes[to + channel] = rgb[from + channel] * 255
  const canvas = new OffscreenCanvas(width, height)
  canvas.getContext('2d', { willReadFrequently: true })!.putImageData(new ImageData(codes, width), 0, 0)
  return canvas.convertToBlob({ type: 'image/jpeg', quality })
}
export type ThumbnailWorker = typeof develop

expose(develop)
