// The colour engine behind opencolorio-tools (Debian, 2.1): what it makes of a colour table file, in 32-bit float.
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { hasTool, say } from './outside-tools.ts'

export const hasColourEngine = hasTool('ociochecklut') && hasTool('ociobakelut')

/** Colours of a file at single places, to seven digits. Throws with the engine's words where it refuses the file. */
export function engineColours(path: string, places: readonly (readonly number[])[]): number[][] {
  return places.map((place) => {
    const said = say('ociochecklut', ['-v', path, ...place.map(String)])
    const numbers = /Output \[R G B\]: \[([^\]]*)\]/.exec(said)?.[1].trim().split(/\s+/).map(Number)
    if (numbers?.length !== 3) throw new Error(`no colours in what was said of ${path}: ${said}`)
    return numbers
  })
}

/** Colours of a file on a grid of `size` points a side over 0…1, red fastest, to six decimals. */
export function engineGrid(path: string, size: number): number[][] {
  const text = say('ociobakelut', ['--lut', path, '--format', 'iridas_cube', '--cubesize', String(size), '--stdout'])
  const rows = text.split('\n').filter((line) => /^[-\d.]/.test(line))
  if (rows.length !== size ** 3) throw new Error(`the engine wrote ${rows.length} colours, not ${size ** 3}`)
  return rows.map((row) => row.trim().split(/\s+/).map(Number))
}

/** Writes text into a file of this name and returns its path. */
export function placed(folder: string, name: string, text: string): string {
  const path = join(folder, name)
  writeFileSync(path, text)
  return path
}
