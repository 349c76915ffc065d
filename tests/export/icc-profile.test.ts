// Profiles as an outside colour engine (Little CMS, through transicc of liblcms2-utils) understands them, against colorjs.io.
import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Color from 'colorjs.io'
import { afterAll, expect, it } from 'vitest'
import { encode } from '../../src/colour/transfer-curve.ts'
import { OUTPUT_SPACES, type OutputSpaceId } from '../../src/colour/output-space.ts'
import { iccProfile } from '../../src/export/icc-profile.ts'
import { hasTool } from '../support/outside-tools.ts'

const folder = mkdtempSync(join(tmpdir(), 'rimeleaf-icc-'))
afterAll(() => rmSync(folder, { recursive: true }))

const linearSpaces = {
  srgb: 'srgb-linear',
  'display-p3': 'p3-linear',
  rec2020: 'rec2020-linear',
  romm: 'prophoto-linear',
}
const ids = Object.keys(OUTPUT_SPACES) as OutputSpaceId[]
const linearColours = [
  [1, 1, 1],
  [0.18, 0.18, 0.18],
  [0.002, 0.002, 0.002],
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
  [0.6, 0.21, 0.035],
]

/** Near black a* is 500·7.787·(X − Y): half a unit of the profile's 16-bit fractions in X and in Y moves it by this much. */
const labTolerance = 2 * 500 * 7.787 * 2 ** -17

/** Lab (D50) of encoded RGB 0…1, as the outside engine reads it through the profile. */
function labByEngine(profilePath: string, encoded: number[]): number[] {
  const { stdout } = spawnSync('transicc', ['-n', `-i${profilePath}`, '-o*Lab', '-t3', '-c0'], {
    input: `${encoded.map((value) => value * 255).join('\n')}\n`,
    encoding: 'utf8',
  })
  return stdout.trim().split(/\s+/).map(Number)
}

it.skipIf(!hasTool('transicc')).each(ids)('%s profile gives colorjs.io’s Lab (skipped without transicc)', (id) => {
  const space = OUTPUT_SPACES[id]
  const path = join(folder, `${id}.icc`)
  writeFileSync(path, iccProfile(space))
  for (const linear of linearColours) {
    const byEngine = labByEngine(
      path,
      linear.map((value) => encode(space.curve, value)),
    )
    const outside = new Color(linearSpaces[id], linear as [number, number, number]).to('lab').coords
    expect(byEngine).toHaveLength(3)
    byEngine.forEach((value, i) => expect(Math.abs(value - Number(outside[i]))).toBeLessThan(labTolerance))
  }
})

it('white of every profile is the connection white of ICC.1:2022 exactly, in its fixed-point numbers', () => {
  for (const id of ids) {
    const view = new DataView(iccProfile(OUTPUT_SPACES[id]).buffer)
    const sum = [0, 0, 0]
    for (let tag = 0; tag < view.getUint32(128); tag++) {
      const entry = 132 + 12 * tag
      const signature = String.fromCharCode(...[0, 1, 2, 3].map((i) => view.getUint8(entry + i)))
      if (!/^[rgb]XYZ$/.test(signature)) continue
      sum.forEach((_, i) => (sum[i] += view.getInt32(view.getUint32(entry + 4) + 8 + 4 * i)))
    }
    expect(sum).toEqual([0xf6d6, 0x10000, 0xd32d])
  }
})
