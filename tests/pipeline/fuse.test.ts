// The fused shader text: what is declared once, in which order steps run, and what is refused. Whether it compiles and
// computes the right numbers is tested in a browser.
import { describe as group, expect, it } from 'vitest'

import { defineOperation, type Coefficients, type Tables } from '../../src/operations/define.ts'
import { chainTables, chainUniforms } from '../../src/pipeline/chain-uniforms.ts'
import type { PipelineDescription } from '../../src/pipeline/description.ts'
import { fuse } from '../../src/pipeline/fuse.ts'
import { resolveIncludes } from '../../src/pipeline/shader-chunks.ts'

const lift = defineOperation({
  id: 'lift',
  version: 1,
  title: 'Lift',
  place: 'free',
  controls: {},
  derive: () => ({ amount: 1 }),
  apply(pixel, k) {
    pixel[0] += k.amount
  },
  glsl: '#include <cube-root>\nvec3 lift(vec3 rgb, LiftCoefficients k, PixelFacts pixel) { return rgb + k.amount; }',
  tolerance: 0,
})

function described(...steps: { coefficients: Coefficients; tables?: Tables }[]): PipelineDescription {
  return {
    structureKey: 'test',
    steps: steps.map(({ coefficients, tables = {} }, i) => ({ stepId: `${i}`, operation: lift, coefficients, tables })),
    mosaicGains: [1, 1, 1],
  }
}

const count = (text: string, part: string) => text.split(part).length - 1

group('fuse', () => {
  it('declares an operation that stands twice once, with one uniform and one call per step', () => {
    const text = fuse(described({ coefficients: { amount: 1 } }, { coefficients: { amount: 2 } }))
    expect(count(text, 'struct LiftCoefficients')).toBe(1)
    expect(count(text, 'vec3 cubeRoot(')).toBe(1)
    expect(count(text, 'vec3 lift(')).toBe(1)
    expect(text.indexOf('rgb = lift(rgb, step0, pixel);')).toBeGreaterThan(0)
    expect(text.indexOf('rgb = lift(rgb, step1, pixel);')).toBeGreaterThan(text.indexOf('step0, pixel);'))
  })

  it('gives every coefficient the type of its shape', () => {
    const nine = [1, 2, 3, 4, 5, 6, 7, 8, 9]
    const text = fuse(
      described({ coefficients: { a: 1, b: true, c: [1, 2], d: [1, 2, 3], e: nine, f: [1, 2, 3, 4, 5], g: [1] } }),
    )
    for (const member of ['float a;', 'int b;', 'vec2 c;', 'vec3 d;', 'mat3 e;', 'float f[5];', 'float g[1];']) {
      expect(text).toContain(member)
    }
  })

  it('hands tables over in the order of their names', () => {
    const table = { width: 2, height: 1, data: new Float32Array(6) }
    const tables: Tables = { lut: { ...table, kind: '3d' }, curve: { ...table, kind: '1d' } }
    const description = described({ coefficients: {}, tables })
    const text = fuse(description)
    expect(text).toContain('uniform highp sampler2D step0_curve;')
    expect(text).toContain('uniform highp sampler3D step0_lut;')
    expect(text).toContain('lift(rgb, step0, pixel, step0_curve, step0_lut)')
    expect(chainTables(description).step0_lut).toBe(tables.lut)
  })

  it('refuses two steps of one operation whose coefficients differ in shape, and empty lists', () => {
    const differing = described({ coefficients: { amount: 1 } }, { coefficients: { amount: [1, 2] } })
    expect(() => fuse(differing)).toThrow(/Two “Lift” steps/)
    expect(() => fuse(described({ coefficients: { amount: [] } }))).toThrow(/“amount” is an empty list/)
  })
})

it('an unknown chunk is named together with the known ones', () => {
  expect(() => resolveIncludes('#include <lost>', new Set())).toThrow(/“lost”; known are cube-root/)
})

it('uniforms carry matrices by columns and booleans as numbers', () => {
  const values = chainUniforms(described({ coefficients: { m: [1, 2, 3, 4, 5, 6, 7, 8, 9], on: true, gain: 2 } }))
  expect(values).toEqual({ step0: { m: [1, 4, 7, 2, 5, 8, 3, 6, 9], on: 1, gain: 2 } })
})
