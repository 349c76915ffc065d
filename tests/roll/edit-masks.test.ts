// Where steps act, in edit files written out by hand: read whole, or refused with the place of the fault.
import { expect, it } from 'vitest'
import { EditFileError, readEditFile, writeEditFile } from '../../src/roll/edit-file.ts'

const foliage = {
  kind: 'foliage',
  values: { borderStops: -0.3, softness: 0.1 },
  inverted: false,
  combine: 'or',
}
const mask = (changes: object = {}) => ({ parts: [foliage], inverted: false, strength: 0.5, ...changes })
const step = (operation: string, more: object = {}) => ({
  id: `${operation}-1`,
  operation,
  version: 1,
  enabled: true,
  values: {},
  ...more,
})
const file = (operation: string, places: object) =>
  JSON.stringify({
    version: 2,
    app: 'rimeleaf',
    chain: [step(operation, { mask: places }), step('outputTransform')],
    marks: [],
  })

async function reasonOf(text: string): Promise<string> {
  try {
    await readEditFile(text, 'dune.json')
  } catch (reason) {
    if (reason instanceof EditFileError) return reason.message
    throw reason
  }
  return 'it was read'
}

it('reads a step’s places and writes them again', async () => {
  const edit = await readEditFile(file('hueTurn', mask()), 'dune.json')
  expect(edit.chain[0].mask).toEqual(mask())
  expect((await readEditFile(writeEditFile(edit), 'dune.json')).chain).toEqual(edit.chain)
})

it('completes values that are left out', async () => {
  const { chain } = await readEditFile(file('hueTurn', mask({ parts: [{ ...foliage, values: {} }] })), 'dune.json')
  expect(Object.keys(chain[0].mask!.parts[0].values)).toEqual(['borderStops', 'softness'])
})

it.each([
  ['an unknown kind', 'hueTurn', mask({ parts: [{ ...foliage, kind: 'weather' }] }), /chain\[0\].*“weather”/],
  ['an unknown way of joining', 'hueTurn', mask({ parts: [{ ...foliage, combine: 'xor' }] }), /parts\[0\]\.combine/],
  ['an unknown key', 'hueTurn', mask({ feather: 3 }), /chain\[0\]\.mask/],
  ['a strength beyond all', 'hueTurn', mask({ strength: 2 }), /chain\[0\]\.mask\.strength/],
  [
    'a value that is no number',
    'hueTurn',
    mask({ parts: [{ ...foliage, values: { softness: 'soft' } }] }),
    /chain\[0\].*“Softness”/,
  ],
  ['places of a step that acts everywhere', 'neutral', mask(), /chain\[0\].*“Neutral” acts everywhere/],
] as const)('refuses %s', async (_name, operation, places, reason) => {
  expect(await reasonOf(file(operation, places))).toMatch(reason)
})
