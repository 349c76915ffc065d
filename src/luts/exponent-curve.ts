// The power curves of Exponent nodes (CLF: Academy S-2014-006 / SMPTE ST 2136-1), numbers in and out.
import type { ExponentCurve, ExponentNode } from './colour-transform.ts'

/** A curve with a line needs an exponent above 1 and an offset above 0; at the limits it is held this far away. */
const LEAST = 1e-6

/** Where the line ends on the linear side, and its slope. */
function lineOf({ exponent, offset }: ExponentCurve): [g: number, o: number, end: number, slope: number] {
  const g = Math.max(exponent, 1 + LEAST)
  const o = Math.max(offset, LEAST)
  const slope = ((g - 1) / o) * ((o * g) / ((g - 1) * (1 + o))) ** g
  return [g, o, o / (g - 1), slope]
}

function withLine(curve: ExponentCurve, forward: boolean, x: number): number {
  const [g, o, end, slope] = lineOf(curve)
  if (forward) return x < end ? x * slope : ((x + o) / (1 + o)) ** g
  return x < end * slope ? x / slope : (1 + o) * x ** (1 / g) - o
}

function power(node: ExponentNode, curve: ExponentCurve, x: number): number {
  const forward = node.direction === 'forward'
  if (node.hasLine)
    return node.negatives === 'mirror' && x < 0 ? -withLine(curve, forward, -x) : withLine(curve, forward, x)
  const exponent = forward ? curve.exponent : 1 / curve.exponent
  if (x >= 0) return x ** exponent
  return node.negatives === 'clamp' ? 0 : node.negatives === 'pass' ? x : -((-x) ** exponent)
}

/** Replaces `rgb` by the node's result. */
export function applyExponent(node: ExponentNode, rgb: Float64Array): void {
  for (let i = 0; i < 3; i++) rgb[i] = power(node, node.curves[i], rgb[i])
}
