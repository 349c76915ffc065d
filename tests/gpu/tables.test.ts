// Tables an operation reads in the shader. Held to what the methods are defined by: linear reading meets the nodes and runs
// straight between them; tetrahedral reading (Sakamoto & Itooka, US patent 4,275,413) is exact for affine maps and, along the
// grey diagonal of a cell, straight between its two end nodes, which trilinear reading is not.
import { afterAll, beforeAll, expect, it } from 'vitest'

import { defineOperation, type Table } from '../../src/operations/define.ts'
import type { PipelineDescription } from '../../src/pipeline/description.ts'
import { createFloatRun, type FloatRun } from './float-run.ts'

/** Table names in order: the shader's arguments come sorted by name. */
const reader = (body: string) =>
  defineOperation({
    id: 'reader',
    version: 1,
    title: 'Reader',
    place: 'free',
    controls: {},
    derive: () => ({}),
    apply: () => {},
    glsl: `#include <table>\nvec3 reader(vec3 rgb, ReaderCoefficients k, PixelFacts pixel, ${body}`,
    tolerance: 0,
  })

let gpu: FloatRun
beforeAll(() => {
  gpu = createFloatRun()
})
afterAll(() => gpu.dispose())

function read(body: string, table: Table, rgb: readonly number[][]): number[][] {
  const steps = [{ stepId: '1', operation: reader(body), coefficients: {}, tables: { table } }]
  const description: PipelineDescription = { structureKey: body, steps, mosaicGains: [1, 1, 1] }
  const rgba = new Float32Array(rgb.flatMap((pixel) => [...pixel, 0]))
  const out = [...gpu.run(description, rgba, rgb.length, 1)]
  return rgb.map((_, i) => out.slice(i * 3, i * 3 + 3))
}

/** Largest difference. */
const apart = (actual: readonly number[][], expected: readonly number[][]) =>
  Math.max(...actual.flat().map((value, i) => Math.abs(value - expected.flat()[i])))

const pseudoRandom = (i: number) => ((Math.imul(i + 1, 2654435761) >>> 8) % 1000) / 1000

it('a one-dimensional table is read straight between its nodes and holds its ends', () => {
  const data = new Float32Array([0, 1, 5, 1, 0.5, 6, 4, 0.25, 7])
  const pixels = [
    [0, 0.5, 1],
    [0.25, 0.75, 0.5],
    [-3, 8, 0.125],
  ]
  const expected = [
    [0, 0.5, 7],
    [0.5, 0.375, 6],
    [0, 0.25, 5.25],
  ]
  const body = 'highp sampler2D table) { return tableAt(table, rgb); }'
  expect(apart(read(body, { kind: '1d', width: 3, height: 1, data }, pixels), expected)).toBeLessThan(1e-6)
})

const cubeBody = 'highp sampler3D table) { return cubeAt(table, rgb); }'
const size = 5
const node = (i: number) => [i % size, Math.floor(i / size) % size, Math.floor(i / size ** 2)]

it('a cube gives affine maps exactly', () => {
  const affine = ([r, g, b]: number[]) => [0.1 + 0.5 * r - 0.2 * g, 0.3 * b + 0.4 * g, 1 - r + 0.7 * b]
  const nodes = Array.from({ length: size ** 3 }, (_, i) => affine(node(i).map((index) => index / (size - 1))))
  const table: Table = { kind: '3d', width: size, height: size, data: new Float32Array(nodes.flat()) }
  const pixels = Array.from({ length: 64 }, (_, i) => [0, 1, 2].map((c) => pseudoRandom(3 * i + c)))
  expect(apart(read(cubeBody, table, pixels), pixels.map(affine))).toBeLessThan(1e-6)
})

it('a cube is read straight along the diagonal of its cells, whatever the other nodes hold', () => {
  const data = Float32Array.from({ length: size ** 3 * 3 }, (_, i) => pseudoRandom(i))
  const at = (i: number) => [...data.subarray((i + i * size + i * size ** 2) * 3).subarray(0, 3)]
  const greys = Array.from({ length: 33 }, (_, i) => i / 32)
  const expected = greys.map((grey) => {
    const low = Math.min(Math.floor(grey * (size - 1)), size - 2)
    const share = grey * (size - 1) - low
    return at(low).map((value, c) => value + share * (at(low + 1)[c] - value))
  })
  const pixels = greys.map((grey) => [grey, grey, grey])
  const table: Table = { kind: '3d', width: size, height: size, data }
  expect(apart(read(cubeBody, table, pixels), expected)).toBeLessThan(1e-6)
})

it('a plane lies over the frame and is read bilinearly', () => {
  const table: Table = { kind: 'plane', width: 2, height: 1, data: new Float32Array([0, 1]) }
  const body = 'highp sampler2D plane) { return vec3(planeAt(plane, pixel.position)); }'
  const shares = [0.125, 0.375, 0.625, 0.875]
  const expected = shares
    .map((share) => Math.min(Math.max(share * 2 - 0.5, 0), 1))
    .map((value) => [value, value, value])
  const blacks = shares.map(() => [0, 0, 0])
  expect(apart(read(body, table, blacks), expected)).toBeLessThan(1e-6)
})
