// A lossless JPEG (ITU-T T.81, process 14, predictor 1) of one 16-bit component, as DNG files pack mosaics. Every length
// category has a code of five bits, so the file is no smaller for it: simple, and read like any other.

const categories = 17
const codeBits = 5

const segment = (marker: number, body: readonly number[]) => [
  0xff,
  marker,
  (body.length + 2) >> 8,
  (body.length + 2) & 255,
  ...body,
]

export function packLosslessJpeg(codes: Uint16Array, width: number, height: number): Uint8Array {
  const huffmanCounts = Array.from({ length: 16 }, (_, length) => (length + 1 === codeBits ? categories : 0))
  const head = [
    0xff,
    0xd8,
    ...segment(0xc4, [0, ...huffmanCounts, ...Array(categories).keys()]),
    ...segment(0xc3, [16, height >> 8, height & 255, width >> 8, width & 255, 1, 1, 0x11, 0]),
    ...segment(0xda, [1, 1, 0, 1, 0, 0]),
  ]
  const bytes: number[] = [...head]
  let held = 0
  let heldBits = 0
  const write = (value: number, bits: number) => {
    for (let bit = bits - 1; bit >= 0; bit--) {
      held = (held << 1) | ((value >> bit) & 1)
      if (++heldBits < 8) continue
      bytes.push(held)
      if (held === 0xff) bytes.push(0)
      held = heldBits = 0
    }
  }
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      const predicted = x > 0 ? codes[i - 1] : y > 0 ? codes[i - width] : 0x8000
      const difference = ((codes[i] - predicted) << 16) >> 16
      const category = 32 - Math.clz32(Math.abs(difference))
      write(category, codeBits)
      if (category < 16) write(difference < 0 ? difference + 2 ** category - 1 : difference, category)
    }
  }
  // Filled up with ones, as the standard asks; a whole byte of them where none was begun does no harm.
  write(0x7f, 7)
  return Uint8Array.from([...bytes, 0xff, 0xd9])
}
