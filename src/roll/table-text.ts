// A colour table as text in an edit: little-endian 32-bit floats in base64, red fastest, under the SHA-256 of these bytes.
// The hash is worked out again on reading, because tables are shared by it: a wrong one would change other frames' pictures.
import type { NamedTable } from './edit.ts'
import { EditFault } from './edit.ts'
import type { TableContent } from './edit-schema.ts'

/** Characters turned at a time: arguments of one call are limited. */
const charactersAtOnce = 32_768

function bytesOf(data: Float32Array): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(data.length * 4)
  const view = new DataView(bytes.buffer)
  data.forEach((value, i) => view.setFloat32(i * 4, value, true))
  return bytes
}

/** The name a table goes by in chains and files: SHA-256 of its bytes, hexadecimal. */
export async function tableHash(data: Float32Array): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytesOf(data)))
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('')
}

export function tableContent({ name, table }: NamedTable): TableContent {
  if (table.kind === 'plane') throw new RangeError(`“${name}” is a plane of one frame and cannot travel with an edit.`)
  const bytes = bytesOf(table.data)
  let letters = ''
  for (let at = 0; at < bytes.length; at += charactersAtOnce)
    letters += String.fromCharCode(...bytes.subarray(at, at + charactersAtOnce))
  return { name, kind: table.kind, size: table.width, data: btoa(letters) }
}

/** The table of a text found under `hash`. @throws EditFault */
export async function readTable(hash: string, { name, kind, size, data }: TableContent): Promise<NamedTable> {
  const fail = (reason: string) => new EditFault(`tables.${hash}.data`, reason)
  let letters: string
  try {
    letters = atob(data)
  } catch {
    throw fail('it is not base64')
  }
  const count = kind === '3d' ? size ** 3 * 3 : size * 3
  if (letters.length !== count * 4) throw fail(`it holds ${letters.length} bytes, a table of this size ${count * 4}`)
  const view = new DataView(Uint8Array.from(letters, (letter) => letter.charCodeAt(0)).buffer)
  const numbers = Float32Array.from({ length: count }, (_, i) => view.getFloat32(i * 4, true))
  if (!numbers.every(Number.isFinite)) throw fail('it holds numbers that are not finite')
  if ((await tableHash(numbers)) !== hash) throw fail('its content does not match its hash: the table was changed')
  return { name, table: { kind, width: size, height: kind === '3d' ? size : 1, data: numbers } }
}
