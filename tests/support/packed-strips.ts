// Samples of a 16-bit TIFF with packed strips, for tests that run in a browser, where no outside reader is at hand.
// What the files are for others is held to libtiff and libvips elsewhere.

async function inflate(bytes: Uint8Array<ArrayBuffer>): Promise<Uint16Array> {
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('deflate'))
  return new Uint16Array(await new Response(stream).arrayBuffer())
}

/** Interleaved RGB of all strips, from top to bottom. */
export async function readPackedStrips(file: Blob): Promise<number[]> {
  const bytes = new Uint8Array(await file.arrayBuffer())
  const view = new DataView(bytes.buffer)
  const directory = view.getUint32(4, true)
  const longs = (tag: number): number[] => {
    for (let at = directory + 2; ; at += 12) {
      if (view.getUint16(at, true) !== tag) continue
      const count = view.getUint32(at + 4, true)
      const values = count === 1 ? at + 8 : view.getUint32(at + 8, true)
      return Array.from({ length: count }, (_, i) => view.getUint32(values + 4 * i, true))
    }
  }
  const perRow = 3 * longs(256)[0]
  const [offsets, lengths] = [longs(273), longs(279)]
  const samples: number[] = []
  for (const [i, offset] of offsets.entries()) {
    const differences = await inflate(bytes.slice(offset, offset + lengths[i]))
    differences.forEach((difference, at) => {
      const left = at % perRow < 3 ? 0 : samples[samples.length - 3]
      samples.push((difference + left) & 0xffff)
    })
  }
  return samples
}
