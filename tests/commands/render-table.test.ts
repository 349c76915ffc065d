// `npm run render` with an edit file that carries its colour table: an exchange of red and blue as a table gives the picture that
// the same exchange gives as a matrix.
import { spawnSync } from 'node:child_process'
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { expect, it } from 'vitest'
import { RED_BLUE_EXCHANGE } from '../../src/colour/mix-matrices.ts'
import { addStep, type Chain } from '../../src/edits/stack.ts'
import type { ColourTransform } from '../../src/luts/colour-transform.ts'
import { colourTableOf } from '../../src/luts/colour-table.ts'
import { writeEditFile } from '../../src/roll/edit-file.ts'
import type { NamedTable } from '../../src/roll/edit.ts'
import { tableHash } from '../../src/roll/table-text.ts'
import { hasTool, say } from '../support/outside-tools.ts'
import { writeDng } from '../support/synthetic-dng.ts'
import { syntheticMosaic } from '../support/synthetic-mosaic.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'

const folder = temporaryFolder()
const ours = (path: string) => fileURLToPath(new URL(`../../${path}`, import.meta.url))
const raw = join(folder, 'slope.dng')
const { width, height, codes, cfa, black, white } = syntheticMosaic(96, 64)
writeFileSync(raw, writeDng({ width, height, codes, cfa, black, white }))

/** 16-bit codes of the picture that the command makes of an edit. */
function rendered(name: string, chain: Chain, tables: Readonly<Record<string, NamedTable>>): Uint16Array {
  const out = join(folder, name)
  const edit = join(folder, `${name}.json`)
  writeFileSync(edit, writeEditFile({ filterNm: 590, chain, marks: [], tables }))
  const loaders = ['--import', 'tsx', '--import', ours('src/commands/text-modules.mjs')]
  const words = [...loaders, ours('src/commands/render.ts'), raw, '--out', out, '--edit', edit]
  const { status, stderr } = spawnSync(process.execPath, words, { encoding: 'utf8', cwd: ours('.') })
  if (status !== 0) throw new Error(stderr)
  const picture = join(out, 'slope.tif')
  say('vips', ['rawsave', picture, `${picture}.raw`])
  return new Uint16Array(Uint8Array.from(readFileSync(`${picture}.raw`)).buffer)
}

const withStep = (operation: string, values = {}) =>
  addStep(addStep(addStep([], 'neutral', { redStops: -1.4, blueStops: 0.8 }), operation, values), 'outputTransform')
const largestApart = (a: Uint16Array, b: Uint16Array) =>
  a.reduce((most, code, i) => Math.max(most, Math.abs(code - b[i])), 0)

it.skipIf(!hasTool('vips'))(
  'the table in the file is used, and one that is missing changes nothing (skipped without vips)',
  async () => {
    const exchange: ColourTransform = {
      title: 'Exchange',
      remarks: ['Rimeleaf encoding: linear'],
      nodes: [{ kind: 'matrix', matrix: RED_BLUE_EXCHANGE, offset: [0, 0, 0] }],
    }
    const { name, table, takes, gives } = colourTableOf(exchange, 'exchange')
    const id = await tableHash(table.data)
    const chain = withStep('colourLut', { table: id, name, takes, gives })
    const [byTable, byMatrix] = [
      rendered('table', chain, { [id]: { name, table } }),
      rendered('matrix', withStep('channelMix', { rows: RED_BLUE_EXCHANGE }), {}),
    ]
    expect(byTable.length).toBe(96 * 64 * 3)
    expect(largestApart(byTable, byMatrix)).toBeLessThanOrEqual(1)
    const untouched = rendered('untouched', withStep('hueTurn', { angleDeg: 0 }), {})
    expect(largestApart(untouched, byMatrix)).toBeGreaterThan(500)
    expect(largestApart(rendered('missing', chain, {}), untouched)).toBeLessThanOrEqual(1)
  },
)
