// Edit files survive writing and reading; a broken one is refused with its place and a reason, never half used.
// Files are written out by hand here, as the page documents them, not by the code under test.
import { createHash } from 'node:crypto'
import { expect, it } from 'vitest'
import { defaultChain } from '../../src/edits/default-chain.ts'
import { addMark } from '../../src/edits/marks.ts'
import { describe } from '../../src/pipeline/describe.ts'
import { renderOnCpu } from '../../src/pipeline/render-on-cpu.ts'
import type { Edit } from '../../src/roll/edit.ts'
import { EditFileError, readEditFile, writeEditFile } from '../../src/roll/edit-file.ts'

const facts = {
  meanCameraRgb: [0.3, 0.1, 0.05],
  referenceNeutral: [1.58, -1],
  noise: { fullScaleElectrons: 50_000, readNoiseElectrons: 3 },
  cameraToXyz: null,
  filterNm: 720,
  aspect: 1.5,
} as const

const step = (operation: string, values: object = {}, more: object = {}) => ({
  id: `${operation}-1`,
  operation,
  version: 1,
  enabled: true,
  values,
  ...more,
})
const mark = (changes: object = {}) => ({
  id: 'm1',
  name: 'paving',
  place: { x: 0.25, y: 0.5 },
  gains: { redStops: -1, blueStops: 0.5 },
  pinned: false,
  ...changes,
})
const file = (changes: object = {}) =>
  JSON.stringify({
    version: 2,
    app: 'rimeleaf',
    filterNm: 720,
    chain: [step('outputTransform')],
    marks: [mark()],
    ...changes,
  })

/** The numbers 0…23 as a 3D table of two entries a side: bytes and hash by Node, not by the code under test. */
const bytes = Buffer.alloc(24 * 4)
for (let i = 0; i < 24; i++) bytes.writeFloatLE(i, i * 4)
const hash = createHash('sha256').update(bytes).digest('hex')
const table = { name: 'heath', kind: '3d', size: 2, data: bytes.toString('base64') }

async function reasonOf(text: string): Promise<string> {
  try {
    await readEditFile(text, 'dune.json')
  } catch (reason) {
    if (reason instanceof EditFileError) return reason.message
    throw reason
  }
  return 'it was read'
}

it.each([720, null, undefined])('what is written is read back the same (filter %s)', async (filterNm) => {
  const marks = addMark(
    addMark([], { redStops: -2, blueStops: 1 }, { x: 0, y: 1 }),
    { redStops: 0, blueStops: 0 },
    null,
  )
  const madeOn = { fileName: 'dune.dng', fingerprint: hash }
  const data = Float32Array.from({ length: 24 }, (_, i) => i)
  const tables = { [hash]: { name: 'heath', table: { kind: '3d', width: 2, height: 2, data } } } as const
  const edit: Edit = { filterNm, chain: defaultChain(facts), marks, tables, madeOn }
  expect(await readEditFile(writeEditFile(edit), 'a.json')).toEqual(edit)
})

it('values and tables written by hand open; values left out are the initial ones, pinned marks come first', async () => {
  const marks = [mark(), mark({ id: 'm4', pinned: true, place: null })]
  const edit = await readEditFile(
    file({ chain: [step('neutral', { redStops: -1.25 }), step('outputTransform')], marks, tables: { [hash]: table } }),
    'a.json',
  )
  expect(edit.chain.map(({ operation }) => operation)).toEqual(['neutral', 'outputTransform'])
  expect(edit.chain[0].values).toMatchObject({ redStops: -1.25, blueStops: 0 })
  expect(edit.marks.map(({ id }) => id)).toEqual(['m4', 'm1'])
  expect([...edit.tables[hash].table.data]).toEqual(Array.from({ length: 24 }, (_, i) => i))
})

it('a version 1 file opens: a chain and its filter, no marks yet', async () => {
  const text = file({
    version: 1,
    marks: undefined,
    chain: [step('neutral', { redStops: -2 }), step('outputTransform')],
  })
  const edit = await readEditFile(text, 'a.json')
  expect(edit).toMatchObject({ filterNm: 720, marks: [], tables: {} })
  expect(edit.chain[0].values).toMatchObject({ redStops: -2, holdBrightness: true })
})

it('a version 1 file makes the picture it made then: grey worked out by hand with the curve of IEC 61966-2-1', async () => {
  const values = { redStops: -1, blueStops: 1, holdBrightness: false, highlightGuard: false }
  const text = file({ version: 1, marks: undefined, chain: [step('neutral', values), step('outputTransform')] })
  const { chain } = await readEditFile(text, 'a.json')
  const light = Float32Array.of(0.4, 0.2, 0.1, 0.4)
  const region = { x: 0, y: 0, width: 1, height: 1, frameWidth: 1, frameHeight: 1 }
  const grey = 1.055 * 0.2 ** (1 / 2.4) - 0.055
  for (const value of renderOnCpu(describe(chain, facts), light, region))
    expect(Math.abs(value - grey) * 65535).toBeLessThan(1)
})

it.each([
  ['not JSON', '{"version": 2,', /dune\.json .*not JSON/],
  ['no object', '[]', /version|app/],
  ['null', 'null', /the whole file/],
  ['another program’s', file({ app: 'other' }), /at app:/],
  ['newer', file({ version: 3 }), /at version: .*newer Rimeleaf/],
  ['of no known version', file({ version: 0 }), /at version:/],
  ['a wavelength of text', file({ filterNm: '720' }), /at filterNm:/],
  ['no chain', file({ chain: undefined }), /at chain:/],
  ['an empty chain', file({ chain: [] }), /at chain:/],
  ['an unknown key', file({ colour: 1 }), /at colour:/],
  ['a step with an unknown key', file({ chain: [step('outputTransform', {}, { x: 1 })] }), /at chain\[0\]\.x:/],
  [
    'an infinite number',
    file({ chain: [step('outputTransform')] }).replace('"values":{}', '"values":{"x":1e999}'),
    /at chain\[0\]\.values\.x/,
  ],
  ['an unknown operation', file({ chain: [step('sharpen'), step('outputTransform')] }), /at chain\[0\]: .*sharpen/],
  [
    'a value of the wrong kind',
    file({ chain: [step('neutral', { redStops: 'much' }), step('outputTransform')] }),
    /at chain\[0\]: /,
  ],
  [
    'a value no picture can hold',
    file({ chain: [step('neutral', { redStops: 400, holdBrightness: false }), step('outputTransform')] }),
    /at chain\[0\]: .*“Neutral” are too large/,
  ],
  ['a newer step', file({ chain: [step('outputTransform', {}, { version: 99 })] }), /newer version/],
  ['one id twice', file({ chain: [step('hueTurn'), step('hueTurn'), step('outputTransform')] }), /same id/],
  [
    'a step without a number',
    file({ chain: [step('outputTransform', {}, { id: 'last' })] }),
    /at chain\[0\]\.id: .*hueTurn-1/,
  ],
  ['no output', file({ chain: [step('neutral')] }), /output/],
  ['an output switched off', file({ chain: [step('outputTransform', {}, { enabled: false })] }), /switched on/],
  [
    'a neutral behind others',
    file({ chain: [step('hueTurn'), step('neutral'), step('outputTransform')] }),
    /cannot stand there/,
  ],
  ['no marks', file({ marks: undefined }), /at marks:/],
  ['a mark outside the picture', file({ marks: [mark({ place: { x: 1.5, y: 0 } })] }), /at marks\[0\]\.place\.x:/],
  ['marks with one id', file({ marks: [mark(), mark()] }), /at marks: .*same id/],
  ['a table under no hash', file({ tables: { heath: table } }), /at tables\.heath: .*SHA-256/],
  [
    'a table cut short',
    file({ tables: { [hash]: { ...table, data: table.data.slice(0, -8) } } }),
    /holds 90 bytes.* 96/,
  ],
  [
    'a table that was changed',
    file({ tables: { [hash]: { ...table, data: table.data.replace(/^.{12}/, 'AACAPwAAgD8A') } } }),
    /the table was changed/,
  ],
  ['a table that is no base64', file({ tables: { [hash]: { ...table, data: '%%' } } }), /not base64/],
])('%s is refused with place and reason', async (_, text, reason) => {
  expect(await reasonOf(text)).toMatch(reason)
})
