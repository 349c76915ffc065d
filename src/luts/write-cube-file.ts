// Text of a `.cube` file (Adobe Cube LUT Specification 1.0, 2013): title, comments, size, then red fastest.

export interface CubeFile {
  readonly title: string
  /** Said before the numbers, a line each; the place to declare the encoding, for which the format has no field. */
  readonly remarks: readonly string[]
  readonly size: number
  /** size³ entries over 0…1, red fastest, interleaved. */
  readonly data: Float32Array
}

/** Nine digits bring a 32-bit float back exactly (IEEE 754-2019, 5.12.2). */
const numberText = (value: number) => (value === 0 ? '0' : String(Number(value.toPrecision(9))))

/** A line of text without what would end it or its quotation. */
const plain = (text: string) => text.replace(/[\s"]+/g, ' ').trim()

export function writeCubeFile({ title, remarks, size, data }: CubeFile): string {
  const lines = [`TITLE "${plain(title)}"`, ...remarks.map((remark) => `# ${plain(remark)}`), `LUT_3D_SIZE ${size}`]
  for (let i = 0; i < data.length; i += 3)
    lines.push(`${numberText(data[i])} ${numberText(data[i + 1])} ${numberText(data[i + 2])}`)
  return `${lines.join('\n')}\n`
}
