// Edit files survive writing and reading; a broken one is refused with its place and a reason, never half used.
// Files are written out by hand here, as the page documents them, not by the code under test.
import { expect, it } from 'vitest'
import { defaultChain } from '../../src/edits/default-chain.ts'
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
const file = (changes: object = {}) =>
  JSON.stringify({ version: 1, app: 'rimeleaf', filterNm: 720, chain: [step('outputTransform')], ...changes })
const reasonOf = (text: string) => {
  try {
    readEditFile(text, 'dune.json')
  } catch (reason) {
    if (reason instanceof EditFileError) return reason.message
    throw reason
  }
  return 'it was read'
}

it.each([720, null, undefined])('what is written is read back the same (filter %s)', (filterNm) => {
  const edit = { filterNm, chain: defaultChain(facts) }
  expect(readEditFile(writeEditFile(edit), 'a.json')).toEqual(edit)
})

it('a version 1 file written by hand opens; values it leaves out are the initial ones', () => {
  const { chain } = readEditFile(
    file({ chain: [step('neutral', { redStops: -1.25 }), step('outputTransform')] }),
    'a.json',
  )
  expect(chain.map(({ operation }) => operation)).toEqual(['neutral', 'outputTransform'])
  expect(chain[0].values).toMatchObject({ redStops: -1.25, blueStops: 0 })
})

it.each([
  ['not JSON', '{"version": 1,', /dune\.json .*not JSON/],
  ['no object', '[]', /version/],
  ['null', 'null', /the whole file/],
  ['another program’s', file({ app: 'other' }), /at app:/],
  ['newer', file({ version: 2 }), /at version: .*newer Rimeleaf/],
  ['a wavelength of text', file({ filterNm: '720' }), /at filterNm:/],
  ['no chain', file({ chain: undefined }), /at chain:/],
  ['an empty chain', file({ chain: [] }), /at chain:/],
  ['an unknown key', file({ colour: 1 }), /at colour:/],
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
  ['a newer step', file({ chain: [step('outputTransform', {}, { version: 99 })] }), /newer version/],
  ['one id twice', file({ chain: [step('hueTurn'), step('hueTurn'), step('outputTransform')] }), /same id/],
  ['no output', file({ chain: [step('neutral')] }), /output/],
  ['an output switched off', file({ chain: [step('outputTransform', {}, { enabled: false })] }), /switched on/],
  [
    'a neutral behind others',
    file({ chain: [step('hueTurn'), step('neutral'), step('outputTransform')] }),
    /cannot stand there/,
  ],
])('%s is refused with place and reason', (_, text, reason) => {
  expect(reasonOf(text)).toMatch(reason)
})
