// The logarithmic curves of Log nodes (CLF: Academy S-2014-006 / SMPTE ST 2136-1), numbers in and out.
import type { LogCurve, LogNode } from './colour-transform.ts'

/** Arguments of a logarithm are held above the least normal 32-bit float, as the standard says. */
const LEAST = 2 ** -126

const logOf = (base: number, x: number) => Math.log(Math.max(x, LEAST)) / Math.log(base)

/** Slope and offset of the line below the break: it meets the curve there, and joins it smoothly unless its slope is given. */
function lineOf(curve: LogCurve, linSideBreak: number): [slope: number, offset: number] {
  const { base, logSideSlope, logSideOffset, linSideSlope, linSideOffset } = curve
  const argument = linSideSlope * linSideBreak + linSideOffset
  const slope = curve.linearSlope ?? (logSideSlope * linSideSlope) / (argument * Math.log(base))
  return [slope, logSideSlope * logOf(base, argument) + logSideOffset - slope * linSideBreak]
}

function encodeLog(curve: LogCurve, x: number): number {
  const { base, logSideSlope, logSideOffset, linSideSlope, linSideOffset, linSideBreak } = curve
  if (linSideBreak !== null && x <= linSideBreak) {
    const [slope, offset] = lineOf(curve, linSideBreak)
    return slope * x + offset
  }
  return logSideSlope * logOf(base, linSideSlope * x + linSideOffset) + logSideOffset
}

function decodeLog(curve: LogCurve, y: number): number {
  const { base, logSideSlope, logSideOffset, linSideSlope, linSideOffset, linSideBreak } = curve
  if (linSideBreak !== null) {
    const [slope, offset] = lineOf(curve, linSideBreak)
    if (y <= slope * linSideBreak + offset) return (y - offset) / slope
  }
  return (base ** ((y - logSideOffset) / logSideSlope) - linSideOffset) / linSideSlope
}

/** Replaces `rgb` by the node's result. */
export function applyLog({ direction, curves }: LogNode, rgb: Float64Array): void {
  for (let i = 0; i < 3; i++)
    rgb[i] = direction === 'encode' ? encodeLog(curves[i], rgb[i]) : decodeLog(curves[i], rgb[i])
}

/** The curve of ACEScct (S-2016-001) in these terms; its line's slope is given there to 15 digits. */
export const ACESCCT_LOG: LogCurve = {
  base: 2,
  logSideSlope: 1 / 17.52,
  logSideOffset: 9.72 / 17.52,
  linSideSlope: 1,
  linSideOffset: 0,
  linSideBreak: 0.0078125,
  linearSlope: 10.5402377416545,
}
