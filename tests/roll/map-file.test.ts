import { expect, test } from 'vitest'
import { mappingOf } from '../../src/edits/colour-map.ts'
import { ownMaps } from '../../src/edits/own-maps.ts'
import { addStep } from '../../src/edits/stack.ts'
import { tableHash } from '../../src/roll/table-text.ts'
import { mapsContent, readMapFile, readMaps, writeMapFile } from '../../src/roll/map-file.ts'

const withoutIds = ownMaps.map(({ name, words, filterNm, steps }) => ({ name, words, filterNm, steps }))

test('maps come back from a file as they went', async () => {
  const { maps } = await readMapFile(writeMapFile(ownMaps, {}), 'maps.json')
  expect(JSON.parse(JSON.stringify(maps))).toEqual(JSON.parse(JSON.stringify(withoutIds)))
})

test('a table travels with the map that reads it', async () => {
  const data = Float32Array.from({ length: 24 }, (_, i) => i / 24)
  const hash = await tableHash(data)
  const named = { name: 'Made up', table: { kind: '3d' as const, width: 2, height: 2, data } }
  const steps = mappingOf(addStep([], 'colourLut', { table: hash, name: 'Made up' }))
  const map = { id: 'x', name: 'With a table', words: '', filterNm: 720, steps }
  const { maps, tables } = await readMapFile(writeMapFile([map], { [hash]: named }), 'maps.json')
  expect(maps[0].steps).toEqual(steps)
  expect(tables[hash].table.data).toEqual(data)
})

const spoilt = (change: (content: ReturnType<typeof JSON.parse>) => void): unknown => {
  const content = JSON.parse(JSON.stringify(mapsContent(ownMaps.slice(2, 4))))
  change(content)
  return content
}

test.each([
  ['another kind of file', (c) => (c.kind = 'recipes'), /colour maps/],
  ['a newer version', (c) => (c.version = 2), /newer Rimeleaf/],
  ['a key that is not known', (c) => (c.maps[0].mask = 1), /mask/],
  ['a map without a name', (c) => (c.maps[1].name = ''), /length/i],
  ['an operation that is not known', (c) => (c.maps[0].steps[0].operation = 'sparkle'), /No operation is called/],
  ['a step that does not map', (c) => (c.maps[0].steps[0].operation = 'exposureContrast'), /does not map colours/],
  ['a value that cannot be used', (c) => (c.maps[0].steps[0].values.rows = [1, 2]), /must hold 9 numbers/],
  ['numbers beyond any picture', (c) => (c.maps[0].steps[0].values.rows = Array(9).fill(1e300)), /too large/],
] as [string, (content: ReturnType<typeof JSON.parse>) => void, RegExp][])(
  '%s is refused with its reason',
  async (_what, change, reason) => {
    await expect(readMaps(spoilt(change))).rejects.toThrow(reason)
  },
)

test('a file that is no JSON names itself and the reason', async () => {
  await expect(readMapFile('LUT_3D_SIZE 33', 'look.cube')).rejects.toThrow(/“look.cube” holds no colour maps.*not JSON/)
})
