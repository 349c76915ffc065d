// A finished picture of known samples for writers: smooth colour with fine noise, so that packing and encoding have work.
import type { BitDepth, FinishedPicture } from '../../src/export/picture-strip.ts'

/** Interleaved RGB samples in the depth's full range; the noise is an integer hash, the same on every run. */
export function syntheticSamples(width: number, height: number, bits: BitDepth) {
  const full = 2 ** bits - 1
  const samples = bits === 16 ? new Uint16Array(width * height * 3) : new Uint8Array(width * height * 3)
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i += 3) {
      const noise = ((Math.imul(x + 1, 73856093) ^ Math.imul(y + 1, 19349663)) >>> 8) / 2 ** 24 / 50
      samples[i] = full * (x / width) * 0.98 + full * noise
      samples[i + 1] = full * (y / height) * 0.98 + full * noise
      samples[i + 2] = full * (0.49 + 0.49 * Math.sin((x + 2 * y) / 40)) + full * noise
    }
  }
  return samples
}

/** `failAfter`: the renderer throws before that strip. */
export function syntheticPicture(width: number, height: number, failAfter = Infinity): FinishedPicture {
  return {
    width,
    height,
    async *renderStrips({ bits, rowsPerStrip }) {
      const samples = syntheticSamples(width, height, bits)
      for (let top = 0, strip = 0; top < height; top += rowsPerStrip, strip++) {
        if (strip >= failAfter) throw new Error('The renderer failed on purpose.')
        const rows = Math.min(rowsPerStrip, height - top)
        yield { top, rows, samples: samples.slice(top * width * 3, (top + rows) * width * 3) }
      }
    },
  }
}
