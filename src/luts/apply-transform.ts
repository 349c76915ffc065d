// Runs a colour transform over one colour in 64-bit float: the definition that sampled tables and outside engines are held to.
import { bitsTowardsZero, halfOfBits } from '../math/half-float.ts'
import { readCube, readLine } from '../math/read-table.ts'
import { applyCdl } from './colour-decision.ts'
import type { ColourTransform, CubeNode, LineNode, MatrixNode, RangeNode, TransformNode } from './colour-transform.ts'
import { applyExponent } from './exponent-curve.ts'
import { applyLog } from './log-curve.ts'

function applyMatrix({ matrix, offset }: MatrixNode, rgb: Float64Array): void {
  const [r, g, b] = rgb
  for (let i = 0; i < 3; i++) rgb[i] = matrix[3 * i] * r + matrix[3 * i + 1] * g + matrix[3 * i + 2] * b + offset[i]
}

function applyRange({ scale, offset, lowest, highest }: RangeNode, rgb: Float64Array): void {
  for (let i = 0; i < 3; i++) {
    const value = scale * rgb[i] + offset
    rgb[i] = Math.min(Math.max(value, lowest ?? -Infinity), highest ?? Infinity)
  }
}

/** Straight between the entries of the two halves beside each number. */
function readHalves(data: Float32Array, rgb: Float64Array): void {
  for (let i = 0; i < 3; i++) {
    const value = rgb[i]
    const low = bitsTowardsZero(value)
    const from = data[low * 3 + i]
    const [lowHalf, highHalf] = [halfOfBits(low), halfOfBits(low + 1)]
    const share = Number.isFinite(highHalf) ? (value - lowHalf) / (highHalf - lowHalf) : 0
    rgb[i] = share > 0 ? from + share * (data[(low + 1) * 3 + i] - from) : from
  }
}

function applyLine({ data, length, halfDomain }: LineNode, rgb: Float64Array): void {
  if (halfDomain) readHalves(data, rgb)
  else readLine(data, length, rgb)
}

function readTrilinear({ data, size }: CubeNode, rgb: Float64Array): void {
  const places = Array.from(rgb, (x) => Math.min(Math.max(x || 0, 0), 1) * (size - 1))
  const low = places.map((place) => Math.min(Math.floor(place), size - 2))
  rgb.fill(0)
  for (let corner = 0; corner < 8; corner++) {
    let weight = 1
    let index = 0
    for (let axis = 0; axis < 3; axis++) {
      const isHigh = (corner >> axis) & 1
      const share = places[axis] - low[axis]
      weight *= isHigh ? share : 1 - share
      index += (low[axis] + isHigh) * size ** axis
    }
    for (let i = 0; i < 3; i++) rgb[i] += weight * data[index * 3 + i]
  }
}

function applyCube(node: CubeNode, rgb: Float64Array): void {
  if (node.reading === 'trilinear') readTrilinear(node, rgb)
  else readCube(node.data, node.size, rgb)
}

function applyNode(node: TransformNode, rgb: Float64Array): void {
  switch (node.kind) {
    case 'matrix':
      return applyMatrix(node, rgb)
    case 'range':
      return applyRange(node, rgb)
    case 'line':
      return applyLine(node, rgb)
    case 'cube':
      return applyCube(node, rgb)
    case 'log':
      return applyLog(node, rgb)
    case 'exponent':
      return applyExponent(node, rgb)
    case 'cdl':
      return applyCdl(node, rgb)
  }
}

/** Replaces `rgb` (three numbers) by what the transform makes of them. */
export function applyTransform({ nodes }: Pick<ColourTransform, 'nodes'>, rgb: Float64Array): void {
  for (const node of nodes) applyNode(node, rgb)
}
