// One strip of a TIFF: horizontal predictor (TIFF 6.0 section 14), then the zlib stream that TIFF calls compression 8.
// Browsers and Node share `CompressionStream`, so packing is the same everywhere.

/** Replaces each sample by its difference to the same channel of the pixel to its left, in place and modulo the depth. */
function predictHorizontally(samples: Uint8Array | Uint16Array, samplesPerRow: number): void {
  for (let start = 0; start < samples.length; start += samplesPerRow) {
    for (let i = start + samplesPerRow - 1; i >= start + 3; i--) samples[i] -= samples[i - 3]
  }
}

/** Packed bytes of interleaved RGB rows; the samples are used up. */
export async function packStrip(
  samples: Uint8Array<ArrayBuffer> | Uint16Array<ArrayBuffer>,
  samplesPerRow: number,
): Promise<Uint8Array<ArrayBuffer>> {
  predictHorizontally(samples, samplesPerRow)
  const bytes = new Uint8Array(samples.buffer, samples.byteOffset, samples.byteLength)
  const packed = new Blob([bytes]).stream().pipeThrough(new CompressionStream('deflate'))
  return new Uint8Array(await new Response(packed).arrayBuffer())
}

export type PackStrip = typeof packStrip
