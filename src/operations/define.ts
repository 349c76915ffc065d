// How an operation is written once: controls, coefficients derived from them, a CPU reference and its GLSL twin.
// Pixel space is linear `workingRgb` unless the operation says otherwise. Pure.
import type { FrameFacts } from '../frame/frame.ts'
import type { Mat3 } from '../math/mat3.ts'

/**
 * One pixel on its way through a chain, mutated in place:
 * [0…2] rgb, [3] largest normalised raw channel (clipping), [4] x and [5] y in 0…1 of the frame.
 */
export type Pixel = Float64Array

export interface SliderControl {
  readonly kind: 'slider'
  readonly label: string
  /** Shown after the number: 'EV', 'stop', '°', '%', or ''. */
  readonly unit: string
  /** Travel of the slider; a typed value may go beyond unless `bounded`. */
  readonly min: number
  readonly max: number
  readonly step: number
  readonly initial: number
  readonly bounded: boolean
  /** Heading over neighbours of the same group, which then take one line each. */
  readonly group?: string
  /** What the ends of the travel mean, where the label alone would not tell. */
  readonly ends?: readonly [low: string, high: string]
  /** Whether a room of the step shows it in a way of its own, and the list of controls leaves it out. */
  readonly inRoom?: boolean
}
export interface ToggleControl {
  readonly kind: 'toggle'
  readonly label: string
  readonly initial: boolean
}
export interface ChoiceControl {
  readonly kind: 'choice'
  readonly label: string
  readonly options: readonly { readonly value: string; readonly label: string }[]
  readonly initial: string
}
/** Numbers with an editor of their own (a matrix, curve points); `initial.length` is fixed unless `variable`. */
export interface NumbersControl {
  readonly kind: 'numbers'
  readonly label: string
  readonly initial: readonly number[]
  readonly variable: boolean
}
/** A string the user does not type, e.g. the id of a table. */
interface TextControl {
  readonly kind: 'text'
  readonly label: string
  readonly initial: string
}
export type Control = SliderControl | ToggleControl | ChoiceControl | NumbersControl | TextControl
export type Controls = Readonly<Record<string, Control>>

export type ControlValue = number | boolean | string | readonly number[]
type ValueOf<C extends Control> = C extends SliderControl
  ? number
  : C extends ToggleControl
    ? boolean
    : C extends NumbersControl
      ? readonly number[]
      : string
export type ValuesOf<C extends Controls> = { readonly [K in keyof C]: ValueOf<C[K]> }

/** A number becomes a float, boolean an int, 2…4 numbers a vec, 9 a mat3 (row-major here), other lengths a float array. */
export type Coefficient = number | boolean | readonly number[]
export type Coefficients = Readonly<Record<string, Coefficient>>

/** Sampled data an operation reads: a 1D or 3D RGB table over 0…1, or a plane over the frame (one channel, 0…1). */
export interface Table {
  readonly kind: '1d' | '3d' | 'plane'
  /** Entries per axis for 1d and 3d (red fastest); width and height for a plane. */
  readonly width: number
  readonly height: number
  readonly data: Float32Array
}
export type Tables = Readonly<Record<string, Table>>

/**
 * Tables that are too large for a step's values, by name: `lut <SHA-256 of its content>`, `<step id> <what>` for a plane made
 * for one step, and a bare word for a plane of the frame, e.g. `texture`. A missing one must leave the picture usable.
 */
export type Supplies = Readonly<Record<string, Table>>

export interface Operation<C extends Controls = Controls, K extends Coefficients = Coefficients> {
  readonly id: string
  readonly version: number
  readonly title: string
  /** Where the step may stand: 'neutral' is first, 'light' right behind it, 'output' last, 'free' between them. */
  readonly place: 'neutral' | 'light' | 'free' | 'output'
  readonly controls: C
  /** Why the initial values are not the identity, if they are not. */
  readonly notIdentityBecause?: string
  /**
   * Work that does not depend on the pixel, once, for both engines; its shape becomes the GLSL struct. `toHere` is the linear part
   * of the way from `cameraRgb` to this step, row-major: for what follows from the sensor's channels or their noise.
   */
  derive(values: ValuesOf<C>, facts: FrameFacts, toHere?: Mat3): K
  /** The 3×3 matrix, row-major, that this step is with these coefficients; absent where it is not linear. */
  linear?(k: K): Mat3
  /** The plane among its tables that says how far the step acts where, for showing it over the picture. */
  readonly reach?: string
  /** The tables that `apply` and the shader read. Return the same object for the same table: a new one is sent to the GPU again. */
  tables?(values: ValuesOf<C>, facts: FrameFacts, supplies: Supplies, stepId: string): Tables
  /** The reference, in place. Must not allocate. */
  apply(pixel: Pixel, k: K, tables: Tables): void
  /** Text of `shaders/operations/<stem>.glsl`; defines `vec3 <id>(vec3 rgb, <Id>Coefficients k, PixelFacts pixel)`. */
  readonly glsl: string
  /** Largest difference between the engines on the contract ramp in 32-bit float: absolute in colours below 1, else relative to their largest channel. */
  readonly tolerance: number
  /** Brings values saved by an earlier version up to date. */
  migrate?(values: Record<string, ControlValue>, fromVersion: number): Record<string, ControlValue>
}

/** Writes an operation down with all its types inferred; adds nothing at run time. */
export function defineOperation<const C extends Controls, K extends Coefficients>(
  operation: Operation<C, K>,
): Operation<C, K> {
  return operation
}
