// Profiles as an outside colour engine reads them (Little CMS, through transicc of liblcms2-utils): the same XYZ from the same
// codes. Ours of four spaces, and those that Ghostscript brings along for their other kinds of curve.
import { spawnSync } from 'node:child_process'
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { OUTPUT_SPACES } from '../../src/colour/output-space.ts'
import { adaptWhite, D65 } from '../../src/colour/primaries.ts'
import { readIccProfile } from '../../src/decode/icc-reader.ts'
import { iccProfile } from '../../src/export/icc-profile.ts'
import { multiply, transform } from '../../src/math/mat3.ts'
import { hasTool } from '../support/outside-tools.ts'
import { randomNumbers } from '../support/synthetic-sensor.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'

const folder = temporaryFolder()
const random = randomNumbers(5)
const codes = [...Array.from({ length: 60 }, () => Math.floor(random() * 256)), 0, 0, 0, 255, 255, 255]
/** transicc prints XYZ in per cent with four decimals. */
const tolerance = 2e-5

/** XYZ under the connection white, Y of white 1. */
function xyzByEngine(profilePath: string): number[] {
  const words = ['-n', `-i${profilePath}`, '-o*XYZ', '-t1', '-c0']
  const { stdout } = spawnSync('transicc', words, { input: `${codes.join('\n')}\n`, encoding: 'utf8' })
  return stdout
    .trim()
    .split(/\s+/)
    .map((number) => Number(number) / 100)
}

const connection = [0.9642 / 2.7891, 1 / 2.7891] as const
function xyzByUs(profilePath: string): number[] {
  const space = readIccProfile(Uint8Array.from(readFileSync(profilePath)))!
  const toConnection = multiply(adaptWhite(D65, connection), space.toXyz!)
  const pixels = Array.from({ length: codes.length / 3 }, (_, i) => codes.slice(3 * i, 3 * i + 3))
  return pixels.flatMap((pixel) =>
    transform(
      toConnection,
      pixel.map((code, c) => space.curves[c](code / 255)),
    ),
  )
}

const ghostscript = ['srgb', 'a98', 'rommrgb'].map((name) => `/usr/share/color/icc/ghostscript/${name}.icc`)
const ours = Object.values(OUTPUT_SPACES).map((space) => {
  const path = join(folder, `${space.id}.icc`)
  writeFileSync(path, iccProfile(space))
  return path
})

describe.skipIf(!hasTool('transicc'))('XYZ of profiles (skipped without transicc)', () => {
  it.each([...ours, ...ghostscript.filter(existsSync)])('%s', (path) => {
    const expected = xyzByEngine(path)
    expect(expected).toHaveLength(codes.length)
    xyzByUs(path).forEach((value, i) => expect(Math.abs(value - expected[i])).toBeLessThan(tolerance))
  })
})

it('names come out of both kinds of description', () => {
  const profile = Uint8Array.from(iccProfile(OUTPUT_SPACES['display-p3']))
  expect(readIccProfile(profile)?.name).toBe('Rimeleaf Display P3')
  // ICC.1:2001-04 6.5.17: the count holds the closing 0. Some writers count one more.
  const view = new DataView(profile.buffer)
  const at = descriptionOffset(view)
  for (const count of [6, 7]) {
    profile.set(new TextEncoder().encode('desc\0\0\0\0\0\0\0\0Heath\0\0'), at)
    view.setUint32(at + 8, count)
    expect(readIccProfile(profile)?.name).toBe('Heath')
  }
})

/** Where the element of the description begins (ICC.1:2022 7.3). */
function descriptionOffset(view: DataView): number {
  const entries = Array.from({ length: view.getUint32(128) }, (_, i) => 132 + 12 * i)
  return view.getUint32(entries.find((entry) => view.getUint32(entry) === 0x64657363)! + 4)
}

it('profiles cut short or changed are left out or finite', () => {
  const whole = iccProfile(OUTPUT_SPACES.romm)
  for (let length = 0; length < whole.length - 60; length += 7)
    expect(readIccProfile(whole.slice(0, length)), `${length} bytes`).toBeNull()
  for (let seed = 0; seed < 500; seed++) {
    const random = randomNumbers(seed)
    const changed = Uint8Array.from(whole)
    for (let n = 0; n < 4; n++) changed[128 + Math.floor(random() * (whole.length - 128))] = random() * 256
    const space = readIccProfile(changed)
    const numbers = space ? [...space.toXyz!, ...space.curves.map((curve) => curve(1))] : []
    expect(numbers.every(Number.isFinite), `seed ${seed}`).toBe(true)
  }
})
