import { expect, test } from 'vitest'
import { smoothstep } from '../../src/math/smoothstep.ts'

test('follows t²(3 − 2t) of GLSL ES 3.00, section 8.3, and is held at both ends', () => {
  expect([-9, 2, 3, 4, 5, 6, 77].map((x) => smoothstep(2, 6, x))).toEqual([0, 0, 0.15625, 0.5, 0.84375, 1, 1])
})
