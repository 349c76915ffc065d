// What becomes of files as tables: kept as they stand, or sampled with the difference told.
import { expect, test } from 'vitest'
import { decodeFromTable, encodeForTable, TABLE_ENCODINGS } from '../../src/colour/table-encoding.ts'
import { applyTransform } from '../../src/luts/apply-transform.ts'
import type { TransformNode } from '../../src/luts/colour-transform.ts'
import { colourTableOf } from '../../src/luts/colour-table.ts'
import { ACESCCT_LOG } from '../../src/luts/log-curve.ts'
import { readLutFile } from '../../src/luts/read-lut-file.ts'
import { sampleCube } from '../../src/luts/sample-cube.ts'
import { writeClfFile } from '../../src/luts/write-clf-file.ts'
import { writeCubeFile } from '../../src/luts/write-cube-file.ts'
import { readCube } from '../../src/math/read-table.ts'
import { evenPlaces } from '../support/sample-places.ts'

const bent = (rgb: Float64Array) => {
  const [r, g, b] = rgb
  rgb[0] = 0.9 * b + 0.1 * g * g
  rgb[1] = g ** 1.3
  rgb[2] = 0.8 * r + 0.15 * b * g
}
const cube = (size: number, reading: 'tetrahedral' | 'trilinear' = 'tetrahedral'): TransformNode => ({
  kind: 'cube',
  size,
  reading,
  data: sampleCube(size, bent),
})
const tableOf = (nodes: readonly TransformNode[], remarks: readonly string[] = []) =>
  colourTableOf({ title: '', remarks, nodes }, 'leaves')
const curves = [ACESCCT_LOG, ACESCCT_LOG, ACESCCT_LOG] as const
const toLog: TransformNode = { kind: 'log', direction: 'encode', curves }
const fromLog: TransformNode = { kind: 'log', direction: 'decode', curves }
const matrix: TransformNode = {
  kind: 'matrix',
  matrix: [0.8, 0.2, 0, 0.1, 0.7, 0.2, 0, 0.3, 0.7],
  offset: [0, 0.02, 0],
}

test('a cube of up to 65 points is kept to the last bit', () => {
  for (const size of [2, 33, 65]) {
    const { table, sampled } = tableOf([cube(size)])
    expect([table.kind, table.width, table.height]).toEqual(['3d', size, size])
    expect(Buffer.from(table.data.buffer).equals(Buffer.from(sampleCube(size, bent).buffer))).toBe(true)
    expect(sampled).toBeNull()
  }
})

test('a larger cube is sampled at 65 points, and the difference told is the one that is there', () => {
  const large = cube(129)
  const { table, sampled } = tableOf([large])
  expect(table.width).toBe(65)
  let largest = 0
  for (const place of evenPlaces(3000)) {
    const [read, wanted] = [Float64Array.from(place), Float64Array.from(place)]
    readCube(table.data, 65, read)
    applyTransform({ nodes: [large] }, wanted)
    largest = Math.max(largest, ...read.map((value, i) => Math.abs(value - wanted[i])))
  }
  expect(sampled!.largest).toBeGreaterThan(largest / 1.3)
  expect(sampled!.largest).toBeLessThan(1e-3)
})

test('what runs straight needs one cell', () => {
  const { table, sampled } = tableOf([matrix])
  expect([table.width, sampled]).toEqual([2, null])
})

test('a cube behind the ACEScct curve and back is that cube, taking and giving the curve', () => {
  const made = tableOf([toLog, cube(17), fromLog])
  expect(made).toMatchObject({ takes: 'acescct', gives: 'acescct', sampled: null })
  expect(made.table.width).toBe(17)
  const wanted = sampleCube(17, bent)
  expect(Math.max(...made.table.data.map((value, i) => Math.abs(value - wanted[i])))).toBeLessThan(1e-6)
})

test('a transform from linear light to display numbers gives these', () => {
  expect(tableOf([toLog, cube(9)])).toMatchObject({ takes: 'acescct', gives: 'srgb' })
})

test('a trilinear cube is sampled finely, and what is left of the difference is told', () => {
  const odd = { ...cube(3, 'trilinear'), data: Float32Array.from({ length: 81 }, (_, i) => (i * 37) % 11) }
  expect(tableOf([odd as TransformNode]).sampled!.largest).toBeGreaterThan(0.001)
})

test('a declared encoding comes back from both kinds of file, whatever they are called', () => {
  const remarks = ['made on a hill', 'Rimeleaf encoding: romm']
  const bytes = (text: string) => new TextEncoder().encode(text)
  const data = sampleCube(5, bent)
  const fromCube = readLutFile(bytes(writeCubeFile({ title: 'Meadow', remarks, size: 5, data })), 'a.clf')
  expect(fromCube).toMatchObject({ name: 'Meadow', takes: 'romm', gives: 'romm', sampled: null })
  const clf = { id: 'a', title: '', remarks, takes: 'x', gives: 'y', nodes: [cube(5)] }
  expect(readLutFile(bytes(writeClfFile(clf)), 'hill.cube')).toMatchObject({ name: 'hill', takes: 'romm' })
})

test('old Latin letters are read, bytes that are no text are refused', () => {
  const latin = new Uint8Array([
    ...new TextEncoder().encode('TITLE "caf'),
    0xe9,
    ...new TextEncoder().encode('"\nLUT_1D_SIZE 2\n0 0 0\n1 1 1\n'),
  ])
  expect(readLutFile(latin, 'a.cube').name).toBe('café')
  expect(() =>
    readLutFile(
      Uint8Array.from({ length: 400 }, (_, i) => (i * 197) % 256),
      'a.cube',
    ),
  ).toThrow(/a\.cube cannot be used/)
  expect(() => readLutFile(new Uint8Array(), 'a.cube')).toThrow('a.cube cannot be used as a colour table: it is empty.')
})

test('numbers that are not finite in the end are refused', () => {
  const root: TransformNode = {
    kind: 'log',
    direction: 'decode',
    curves: [0, 1, 2].map(() => ({ ...ACESCCT_LOG, logSideSlope: 1e-6 })) as never,
  }
  expect(() => tableOf([root])).toThrow(/not finite/)
})

test('encodings are their own inverses, and meet their standards', () => {
  for (const encoding of Object.values(TABLE_ENCODINGS))
    for (const value of [-0.02, 0, 0.001, 0.02, 0.18, 0.5, 1, 4])
      expect(decodeFromTable(encoding, encodeForTable(encoding, value))).toBeCloseTo(value, 10)
  // S-2016-001; IEC 61966-2-1; ISO 22028-2: .18^(1/1.8).
  expect(encodeForTable(TABLE_ENCODINGS.acescct, 0.18)).toBeCloseTo(0.4135884, 7)
  expect(encodeForTable(TABLE_ENCODINGS.srgb, 0.5)).toBeCloseTo(0.735357, 5)
  expect(encodeForTable(TABLE_ENCODINGS.romm, 0.18)).toBeCloseTo(0.18 ** (1 / 1.8), 12)
})
