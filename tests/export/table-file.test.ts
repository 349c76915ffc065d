// Colour tables that leave, held to the colour engine of opencolorio-tools and to the chain they were made of.
import { describe as group, expect, test } from 'vitest'
import { TABLE_ENCODINGS, type TableEncodingId } from '../../src/colour/table-encoding.ts'
import { RED_BLUE_EXCHANGE } from '../../src/colour/mix-matrices.ts'
import { addStep, type Chain } from '../../src/edits/stack.ts'
import { tableFile, tableFileName, type TableFileSettings } from '../../src/export/table-file.ts'
import { isExact } from '../../src/export/step-nodes.ts'
import { applyTransform } from '../../src/luts/apply-transform.ts'
import { readClfFile } from '../../src/luts/read-clf-file.ts'
import { readCubeFile } from '../../src/luts/read-cube-file.ts'
import { readLutFile } from '../../src/luts/read-lut-file.ts'
import { makePart } from '../../src/operations/masks/mask.ts'
import { colourLut, lutSupply } from '../../src/operations/colour-lut.ts'
import { describe } from '../../src/pipeline/describe.ts'
import { pointwiseMap, stepsOf } from '../../src/pipeline/pointwise-map.ts'
import { applyOperation, plainFacts } from '../support/apply-operation.ts'
import { engineColours, engineGrid, hasColourEngine, placed } from '../support/outside-colour-engine.ts'
import { evenPlaces, largestApart } from '../support/sample-places.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'

const folder = temporaryFolder()

function chain(): Chain {
  let made = addStep([], 'neutral', { redStops: -1.7, blueStops: 0.9 })
  made = addStep(made, 'channelMix', { rows: RED_BLUE_EXCHANGE })
  made = addStep(made, 'hueTurn', { angleDeg: 140 })
  made = addStep(made, 'exposureContrast', { exposureEv: 0.4, contrast: 0.3, shoulder: 0.5 })
  return addStep(made, 'outputTransform')
}
const description = describe(chain(), plainFacts)
const mapping = ['channelMix-1', 'hueTurn-1']
const all = [...mapping, 'exposureContrast-1']

/** Foliage, stone and sky behind a 590 nm filter at several levels, as pixels in `cameraRgb`. */
const pixels = new Float64Array(
  [0.05, 0.2, 0.6].flatMap((level) =>
    [
      [1, 0.26, 0.2],
      [1, 0.3, 0.17],
      [0.9, 0.33, 0.24],
    ].flatMap((rgb) => [...rgb.map((value) => value * level), level, 0.5, 0.5]),
  ),
)
const settingsFor = (change: Partial<TableFileSettings>): TableFileSettings => ({
  format: 'cube',
  size: 33,
  encoding: 'acescct',
  title: 'Lower meadow',
  stepIds: mapping,
  ...change,
})
const fileOf = (change: Partial<TableFileSettings>) => tableFile(description, settingsFor(change), pixels)
const textOf = (change: Partial<TableFileSettings>) => String(fileOf(change).content)

/** What the text of a file makes of colours in its own numbers, as read here. */
function throughFile(text: string, places: readonly number[][]): number[][] {
  const read = text.startsWith('<') ? readClfFile : readCubeFile
  const made = read(text, 'ours')
  return places.map((place) => {
    const rgb = Float64Array.from(place)
    applyTransform(made, rgb)
    return [...rgb]
  })
}
function throughChain(stepIds: readonly string[], places: readonly number[][]): number[][] {
  const map = pointwiseMap(stepsOf(description, stepIds))
  return places.map((place) => {
    const rgb = Float64Array.from(place)
    map(rgb)
    return [...rgb]
  })
}

const encodings = Object.keys(TABLE_ENCODINGS) as TableEncodingId[]
const sizes = [17, 33, 65] as const
const thousand = Array.from({ length: 1000 }, (_, i) =>
  [i % 10, Math.floor(i / 10) % 10, Math.floor(i / 100)].map((n) => n / 9),
)

group.skipIf(!hasColourEngine)('the outside engine agrees (skipped without opencolorio-tools)', () => {
  test.each(
    encodings.flatMap((encoding) => (encoding === 'acescct' ? sizes : [33]).map((size) => [encoding, size] as const)),
  )('.cube in %s with %i points: the same 1,000 colours', (encoding, size) => {
    const text = textOf({ encoding, size: size as 33, stepIds: all })
    const wanted = engineGrid(placed(folder, `${encoding}-${size}.cube`, text), 10)
    expect(largestApart(throughFile(text, thousand), wanted)).toBeLessThan(1e-5)
  })

  test.each(sizes)('CLF with sampled steps, %i points: the same 1,000 colours, and others beyond 0…1', (size) => {
    const text = textOf({ format: 'clf', size, stepIds: all })
    expect(stepsOf(description, all).map(isExact)).toEqual([true, true, false])
    expect(text.match(/<LUT3D/g)).toHaveLength(1)
    const path = placed(folder, `all-${size}.clf`, text)
    expect(largestApart(throughFile(text, thousand), engineGrid(path, 10))).toBeLessThan(1e-5)
    const beyond = evenPlaces(size === 65 ? 5 : 60, -0.5, 6)
    expect(largestApart(throughFile(text, beyond), engineColours(path, beyond))).toBeLessThan(1e-5)
  })

  test('CLF of exchange and hue turn is the chain itself, at 1,000 places and beyond 0…1', () => {
    const text = textOf({ format: 'clf' })
    expect(text).not.toContain('<LUT3D')
    const path = placed(folder, 'exact.clf', text)
    const places = [...evenPlaces(60, -0.5, 6), ...thousand]
    const wanted = throughChain(mapping, places)
    expect(largestApart(engineColours(path, places.slice(0, 60)), wanted.slice(0, 60))).toBeLessThan(1e-5)
    expect(largestApart(engineGrid(path, 10), wanted.slice(60))).toBeLessThan(1e-5)
  })
})

test.each(encodings)('.cube in %s comes back through a colour table step as it left', (encoding) => {
  const text = textOf({ encoding })
  const { table, takes, gives, sampled } = readLutFile(new TextEncoder().encode(text), 'meadow.cube')
  expect([takes, gives, sampled]).toEqual([encoding, encoding, null])
  const places = [
    [0.3, 0.32, 0.28],
    [0.5, 0.4, 0.45],
  ]
  const supplies = { [lutSupply('a')]: table }
  const given = places.map((rgb) => applyOperation(colourLut, rgb, { table: 'a', takes, gives }, { supplies }))
  expect(largestApart(given, throughChain(mapping, places))).toBeLessThan(0.01)
})

test('CLF of a matrix comes back exactly', () => {
  const text = textOf({ format: 'clf', stepIds: ['channelMix-1'] })
  const made = readLutFile(new TextEncoder().encode(text), 'exchange.clf')
  expect(made).toMatchObject({ takes: 'linear', gives: 'linear', sampled: null })
  const supplies = { [lutSupply('a')]: made.table }
  const values = { table: 'a', takes: made.takes, gives: made.gives }
  const given = applyOperation(colourLut, [0.7, 0.2, 4], values, { supplies })
  expect(largestApart([given], [[4, 0.2, 0.7]])).toBeLessThan(1e-6)
})

test('what is measured grows with coarser cubes, and is nothing where the file is exact', () => {
  const [coarse, middle, fine] = sizes.map((size) => fileOf({ size }))
  console.log([coarse, middle, fine].map(({ ofFrame, ofGrid }) => ({ frame: ofFrame, grid: ofGrid })))
  expect(coarse.ofGrid.mean).toBeGreaterThan(middle.ofGrid.mean)
  expect(middle.ofGrid.mean).toBeGreaterThan(fine.ofGrid.mean)
  for (const { ofFrame, ofGrid } of [coarse, middle, fine])
    for (const { count, mean, p99, largest } of [ofFrame, ofGrid]) {
      expect(count).toBeGreaterThan(5)
      expect(mean <= p99 && p99 <= largest).toBe(true)
    }
  expect(fileOf({ format: 'clf' }).ofGrid.largest).toBeLessThan(1e-3)
  expect(fileOf({ format: 'clf' }).ofGrid.outside).toBe(0)
})

test('colours outside the numbers of the file are counted and not measured', () => {
  const { ofGrid } = fileOf({ encoding: 'srgb' })
  // Even colours of Rec. 2020 of which less than half lie within sRGB: its primaries span 35 % of CIE 1931 xy against 75 %.
  expect(ofGrid.outside).toBeGreaterThan(0.3)
  expect(ofGrid.outside).toBeLessThan(0.8)
})

test('the encoding is declared in title and comments', () => {
  const text = textOf({ encoding: 'romm', title: 'Leaves "by" noon' })
  expect(text.split('\n').slice(0, 5)).toEqual([
    'TITLE "Leaves by noon (ROMM RGB in and out)"',
    '# A colour table by Rimeleaf of: Channel mix, Hue turn',
    '# Takes and gives ROMM RGB as encoded by ISO 22028-2 (exponent 1.8)',
    '# Rimeleaf encoding: romm',
    'LUT_3D_SIZE 33',
  ])
})

test('a step that acts on a hue leaves as it acts, one that acts on a place is refused by name', () => {
  const masked = (kind: string) => {
    const mask = { parts: [makePart(kind)], inverted: false, strength: 0.5 }
    return describe(
      chain().map((step) => (step.id === 'hueTurn-1' ? { ...step, mask } : step)),
      plainFacts,
    )
  }
  const [coarse, fine] = ([17, 65] as const).map((size) => tableFile(masked('hue'), settingsFor({ size }), pixels))
  expect(fine.ofGrid.mean).toBeLessThan(coarse.ofGrid.mean / 3)
  expect(stepsOf(masked('hue'), mapping).map(isExact)).toEqual([true, false])
  expect(() => tableFile(masked('radial'), settingsFor({}), pixels)).toThrow(
    '“Hue turn” acts differently from place to place.',
  )
})

test('files are named after their title', () => {
  expect(tableFileName({ title: 'Lower meadow, 590 nm', format: 'clf' })).toBe('lower-meadow-590-nm.clf')
  expect(tableFileName({ title: ' /..\\ ', format: 'cube' })).toBe('colour-table.cube')
})

test('the nearest encoding is nearer than every other one that holds the colours of the frame', () => {
  const found = fileOf({ encoding: 'nearest', size: 17, stepIds: all })
  const others = encodings.map((encoding) => fileOf({ encoding, size: 17, stepIds: all }))
  console.log(
    others.map(({ encoding, ofFrame }) => `${encoding} ${ofFrame.p99.toFixed(2)} (${ofFrame.outside} outside)`),
  )
  for (const { ofFrame } of others)
    expect(ofFrame.p99 >= found.ofFrame.p99 || ofFrame.outside > found.ofFrame.outside).toBe(true)
  expect(found.content).toBe(others.find(({ encoding }) => encoding === found.encoding)!.content)
})

test('where light is brighter than white, the nearest encoding is the one that holds it', () => {
  const bright = pixels.map((value, i) => (i % 6 < 3 ? value * 8 : value))
  const { encoding, ofFrame } = tableFile(description, settingsFor({ encoding: 'nearest', stepIds: all }), bright)
  expect([encoding, ofFrame.outside]).toEqual(['acescct', 0])
})

test('a device link is never in an encoding that no picture is in', () => {
  const { encoding } = fileOf({ format: 'icc', encoding: 'nearest' })
  expect(['srgb', 'display-p3', 'rec2020', 'romm']).toContain(encoding)
})
