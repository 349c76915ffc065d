// The container of ICC profiles (ICC.1:2022, version 4.4): header, tag table and the few kinds of data that ours hold.
// Big-endian throughout; fractions are s15Fixed16. The date is fixed, so that the same content gives the same file.

/** Profile connection white, ICC.1:2022 7.2.16. */
export const CONNECTION_WHITE = [0.9642, 1, 0.8249]

/** Header length, ICC.1:2022 table 17. */
const HEADER_BYTES = 128
/** One entry of the tag table: signature, offset, size. */
const TAG_ENTRY_BYTES = 12

export const ascii = (text: string) => Array.from(text, (letter) => letter.charCodeAt(0))
export const uint16 = (value: number) => [(value >>> 8) & 255, value & 255]
export const uint32 = (value: number) => [...uint16(value >>> 16), ...uint16(value & 65535)]
export const fixedOf = (value: number) => Math.round(value * 65536)
export const fixed = (values: readonly number[]) => values.flatMap((value) => uint32(fixedOf(value)))

/** `mluc` with one English record; text is UTF-16, big-endian. */
export function localised(text: string): number[] {
  const letters = Array.from({ length: text.length }, (_, i) => uint16(text.charCodeAt(i))).flat()
  return [
    ...ascii('mluc'),
    ...uint32(0),
    ...uint32(1),
    ...uint32(12),
    ...ascii('enUS'),
    ...uint32(letters.length),
    ...uint32(28),
    ...letters,
  ]
}

export type IccTag = readonly [signature: string, data: ArrayLike<number>]

/** Bytes of a profile. `kind` is device class, data colour space and connection space, four letters each. */
export function iccFile(kind: string, tags: readonly IccTag[]): Uint8Array<ArrayBuffer> {
  const table: number[] = []
  const offsets = new Map<ArrayLike<number>, number>()
  let end = HEADER_BYTES + 4 + tags.length * TAG_ENTRY_BYTES
  for (const [signature, data] of tags) {
    if (!offsets.has(data)) {
      offsets.set(data, end)
      end += Math.ceil(data.length / 4) * 4
    }
    table.push(...ascii(signature), ...uint32(offsets.get(data)!), ...uint32(data.length))
  }

  const profile = new Uint8Array(end)
  profile.set([...uint32(end), ...uint32(0), ...uint32(0x04400000), ...ascii(kind)])
  profile.set([...uint16(2026), ...uint16(1), ...uint16(1)], 24)
  profile.set(ascii('acsp'), 36)
  // The illuminant is the connection white.
  profile.set(fixed(CONNECTION_WHITE), 68)
  profile.set([...uint32(tags.length), ...table], HEADER_BYTES)
  for (const [data, offset] of offsets) profile.set(data, offset)
  return profile
}
