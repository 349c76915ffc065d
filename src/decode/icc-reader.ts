// Reads ICC profiles of matrix and curves (ICC.1:2022, and version 2 alike): what displays and cameras embed. Encoded 0…1 in,
// linear 0…1 and XYZ under D65 out. Profiles made of tables only are not read: they are rendering intents more than light.
import { adaptWhite, type Chromaticity, D65 } from '../colour/primaries.ts'
import { multiply } from '../math/mat3.ts'

/** Encoded 0…1 to linear 0…1. */
export type Curve = (encoded: number) => number

export interface EmbeddedSpace {
  readonly name: string
  /** Red, green and blue; three times the same for grey. */
  readonly curves: readonly [Curve, Curve, Curve]
  /** XYZ (D65, white Y = 1) from linear RGB, row-major; null for grey. */
  readonly toXyz: readonly number[] | null
}

/** Connection white, ICC.1:2022 7.2.16, as chromaticity. */
const connectionWhite: Chromaticity = [0.9642 / (0.9642 + 1 + 0.8249), 1 / (0.9642 + 1 + 0.8249)]

interface Tag {
  readonly type: string
  readonly at: number
  readonly view: DataView
}

const textAt = (view: DataView, at: number, length: number) =>
  Array.from({ length }, (_, i) => String.fromCharCode(view.getUint8(at + i))).join('')
const fixedAt = (view: DataView, at: number) => view.getInt32(at) / 65536

/** ICC.1:2022 10.6: no entries is linear, one a power in 1/256, more a table. */
function curveTable({ view, at }: Tag): Curve {
  const count = view.getUint32(at + 8)
  if (count === 0) return (encoded) => encoded
  const entry = (i: number) => view.getUint16(at + 12 + 2 * i)
  if (count === 1) return (encoded) => encoded ** (entry(0) / 256)
  const values = Array.from({ length: count }, (_, i) => entry(i) / 65535)
  return (encoded) => {
    const place = encoded * (count - 1)
    const below = Math.min(Math.floor(place), count - 2)
    return values[below] + (values[below + 1] - values[below]) * (place - below)
  }
}

/** ICC.1:2022 10.18, functions 0 to 4. */
function parametricCurve({ view, at }: Tag): Curve {
  const kind = view.getUint16(at + 8)
  const p = Array.from({ length: [1, 3, 4, 5, 7][kind] ?? 0 }, (_, i) => fixedAt(view, at + 12 + 4 * i))
  const [g, a = 1, b = 0, c = 0, d = 0, e = 0, f = 0] = p
  const power = (x: number) => Math.max(a * x + b, 0) ** g
  if (kind === 0) return (x) => x ** g
  if (kind === 1) return (x) => (a * x + b >= 0 ? power(x) : 0)
  if (kind === 2) return (x) => (a * x + b >= 0 ? power(x) : 0) + c
  if (kind === 3) return (x) => (x >= d ? power(x) : c * x)
  if (kind === 4) return (x) => (x >= d ? power(x) + e : c * x + f)
  throw new RangeError(`A parametric curve of kind ${kind} is not known.`)
}

function curveOf(tag: Tag): Curve {
  if (tag.type === 'curv') return curveTable(tag)
  if (tag.type === 'para') return parametricCurve(tag)
  throw new RangeError(`A curve of type “${tag.type}” is not known.`)
}

/** The description, of version 2 (`desc`) or 4 (`mluc`); what stands behind a closing 0 is not its text. */
function nameOf(tag: Tag | undefined): string {
  const [text] = describedBy(tag).split('\0')
  return text.trim() || 'unnamed'
}

function describedBy(tag: Tag | undefined): string {
  if (tag?.type === 'desc') return textAt(tag.view, tag.at + 12, Math.max(tag.view.getUint32(tag.at + 8) - 1, 0))
  if (tag?.type !== 'mluc') return 'unnamed'
  const length = tag.view.getUint32(tag.at + 20)
  const from = tag.at + tag.view.getUint32(tag.at + 24)
  return Array.from({ length: length / 2 }, (_, i) => String.fromCharCode(tag.view.getUint16(from + 2 * i))).join('')
}

/** Tags by signature (ICC.1:2022 7.3). */
function tagsOf(view: DataView): Map<string, Tag> {
  const count = Math.min(view.getUint32(128), 200)
  return new Map(
    Array.from({ length: count }, (_, i) => {
      const at = view.getUint32(136 + 12 * i)
      return [textAt(view, 132 + 12 * i, 4), { type: textAt(view, at, 4), at, view }]
    }),
  )
}

function readSpace(view: DataView): EmbeddedSpace | null {
  const tags = tagsOf(view)
  const name = nameOf(tags.get('desc'))
  const curveFor = (signature: string) => curveOf(tags.get(signature)!)
  if (textAt(view, 16, 4) === 'GRAY') {
    const curve = curveFor('kTRC')
    return { name, curves: [curve, curve, curve], toXyz: null }
  }
  if (textAt(view, 16, 4) !== 'RGB ' || textAt(view, 20, 4) !== 'XYZ ') return null
  const columns = ['rXYZ', 'gXYZ', 'bXYZ'].map((signature) => {
    const { at } = tags.get(signature)!
    return [0, 1, 2].map((row) => fixedAt(view, at + 8 + 4 * row))
  })
  const toConnection = [0, 1, 2].flatMap((row) => columns.map((column) => column[row]))
  return {
    name,
    curves: [curveFor('rTRC'), curveFor('gTRC'), curveFor('bTRC')],
    toXyz: multiply(adaptWhite(connectionWhite, D65), toConnection),
  }
}

/** The space a profile describes, or null where it is damaged or of a kind that is not read. */
export function readIccProfile(bytes: Uint8Array): EmbeddedSpace | null {
  try {
    const space = readSpace(new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength))
    const ends = space?.curves.flatMap((curve) => [curve(0), curve(0.5), curve(1)]) ?? [NaN]
    return [...ends, ...(space?.toXyz ?? [])].every(Number.isFinite) ? space : null
  } catch {
    return null
  }
}
