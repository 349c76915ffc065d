// The ASC Color Decision List, version 1.2: slope, offset and power per channel, then saturation about the level; and its inverse.
import type { CdlNode } from './colour-transform.ts'

/** Weights of the level in ASC CDL 1.2, those of ITU-R BT.709. */
const LEVEL = [0.2126, 0.7152, 0.0722]

const held = (clamps: boolean, x: number) => (clamps ? Math.min(Math.max(x, 0), 1) : x)
/** Below 0 a power without clamping passes the number on. */
const powered = (x: number, exponent: number) => (x < 0 ? x : x ** exponent)

function saturate(rgb: Float64Array, saturation: number): void {
  const level = LEVEL[0] * rgb[0] + LEVEL[1] * rgb[1] + LEVEL[2] * rgb[2]
  for (let i = 0; i < 3; i++) rgb[i] = level + saturation * (rgb[i] - level)
}

/** Replaces `rgb` by the node's result. */
export function applyCdl(node: CdlNode, rgb: Float64Array): void {
  const { clamps, slope, offset, power, saturation } = node
  if (node.direction === 'forward') {
    for (let i = 0; i < 3; i++) rgb[i] = powered(held(clamps, rgb[i] * slope[i] + offset[i]), power[i])
    saturate(rgb, saturation)
    for (let i = 0; i < 3; i++) rgb[i] = held(clamps, rgb[i])
  } else {
    for (let i = 0; i < 3; i++) rgb[i] = held(clamps, rgb[i])
    saturate(rgb, 1 / saturation)
    for (let i = 0; i < 3; i++)
      rgb[i] = held(clamps, (powered(held(clamps, rgb[i]), 1 / power[i]) - offset[i]) / slope[i])
  }
}
