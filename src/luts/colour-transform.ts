// A colour transform as a list of plain nodes, as colour table files hold them: numbers in, numbers out, no space of its own.
// All nodes work on numbers without a bit depth; files scale theirs when they are read.

export type Channels = readonly [red: number, green: number, blue: number]

/** out = matrix · rgb + offset; row-major. */
export interface MatrixNode {
  readonly kind: 'matrix'
  readonly matrix: readonly number[]
  readonly offset: Channels
}
/** out = scale · x + offset, then held within the limits that are not null. */
export interface RangeNode {
  readonly kind: 'range'
  readonly scale: number
  readonly offset: number
  readonly lowest: number | null
  readonly highest: number | null
}
/** A curve per channel over 0…1, or over all half floats if `halfDomain` (65,536 entries, by their bits). Interleaved. */
export interface LineNode {
  readonly kind: 'line'
  readonly length: number
  readonly halfDomain: boolean
  readonly data: Float32Array
}
/** A cube over 0…1, red fastest, interleaved. */
export interface CubeNode {
  readonly kind: 'cube'
  readonly size: number
  readonly reading: 'tetrahedral' | 'trilinear'
  readonly data: Float32Array
}
export interface LogCurve {
  readonly base: number
  readonly logSideSlope: number
  readonly logSideOffset: number
  readonly linSideSlope: number
  readonly linSideOffset: number
  /** Below it (linear side) runs a line; null for a curve without one. */
  readonly linSideBreak: number | null
  /** Slope of that line; null joins it smoothly. */
  readonly linearSlope: number | null
}
export interface LogNode {
  readonly kind: 'log'
  readonly direction: 'encode' | 'decode'
  readonly curves: readonly [LogCurve, LogCurve, LogCurve]
}
export interface ExponentCurve {
  readonly exponent: number
  /** Of the curve with a line near black; 0 for a plain power. */
  readonly offset: number
}
export interface ExponentNode {
  readonly kind: 'exponent'
  readonly direction: 'forward' | 'reverse'
  readonly hasLine: boolean
  /** What happens below 0: clamped, mirrored, or passed on unchanged. */
  readonly negatives: 'clamp' | 'mirror' | 'pass'
  readonly curves: readonly [ExponentCurve, ExponentCurve, ExponentCurve]
}
export interface CdlNode {
  readonly kind: 'cdl'
  readonly direction: 'forward' | 'reverse'
  readonly clamps: boolean
  readonly slope: Channels
  readonly offset: Channels
  readonly power: Channels
  readonly saturation: number
}
export type TransformNode = MatrixNode | RangeNode | LineNode | CubeNode | LogNode | ExponentNode | CdlNode

export interface ColourTransform {
  /** The file's own title, or ''. */
  readonly title: string
  /** What the file says of itself, line by line: comments, descriptions, what it takes and gives. */
  readonly remarks: readonly string[]
  readonly nodes: readonly TransformNode[]
}
