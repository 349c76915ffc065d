// A frame: one opened photograph as sensor data and facts about it. Everything here is already upright
// (the decode worker turns the mosaic once), so that nothing downstream ever asks about orientation.
import type { Rounding } from './rounding.ts'

import type { CellGrid } from './cell-grid.ts'

/** Colour of one photosite: 0 red, 1 green, 2 blue. One-channel sensors carry 1 everywhere. */
export type CfaColour = 0 | 1 | 2

/** A repeating colour filter array relative to the first visible photosite: 2×2 for Bayer, 6×6, or 1×1 for one channel. */
export interface Cfa {
  readonly columns: number
  readonly rows: number
  /** Row-major, `rows * columns` entries. */
  readonly colours: readonly CfaColour[]
}

/** A repeating table of levels in raw codes, relative to the first visible photosite. */
export interface LevelTable {
  readonly columns: number
  readonly rows: number
  readonly codes: readonly number[]
}

/** One code per photosite, visible area only, row-major, upright. */
export interface MosaicData {
  readonly kind: 'mosaic'
  readonly width: number
  readonly height: number
  readonly codes: Uint16Array
  readonly cfa: Cfa
  readonly black: LevelTable
  /** Code of saturation, the same for all positions. */
  readonly white: number
}

/** Three linear codes per pixel, interleaved RGB, upright: files without a mosaic, and linearised JPEG or TIFF. */
export interface LinearData {
  readonly kind: 'linear'
  readonly width: number
  readonly height: number
  readonly codes: Uint16Array
  /** Per channel R, G, B. */
  readonly black: readonly [number, number, number]
  readonly white: number
}

export type SensorData = MosaicData | LinearData

/**
 * Area average of whole CFA cells, all colours about one centre, `cameraRgb` at unity gain in 0…1 (noise below 0 kept), RGBA
 * interleaved; alpha is the largest normalised photosite that the average draws on: 1 means something in it is clipped.
 */
export interface Overview {
  readonly width: number
  readonly height: number
  readonly rgba: Float32Array
  /** Sensor pixels that one overview pixel spans in x and y. */
  readonly scale: number
}

/** Photon and read noise: variance of a normalised value y is `y / fullScaleElectrons + (readNoiseElectrons / fullScaleElectrons)²`. */
export interface NoiseModel {
  readonly fullScaleElectrons: number
  readonly readNoiseElectrons: number
  /** Absent where codes are fine. */
  readonly rounding?: Rounding
}

/** How often the photosites of one colour stand at which level. */
export interface ChannelHistogram {
  readonly photosites: number
  /** Photosites at or above white. */
  readonly clipped: number
  /** Photosites at or below their black level. */
  readonly black: number
  /** Photosites over even parts of the stops from ten below saturation (first) to saturation (last); darker ones are left out. */
  readonly bins: readonly number[]
}

/** Red, green and blue before any gain; one entry alone for a sensor of one channel. */
export type SensorHistogram = readonly ChannelHistogram[]

/** What is told of a frame beside its picture. No picture needs it, so it is worked out when the first one is on its way. */
export interface FrameReadings {
  readonly histogram: SensorHistogram
  /** Places that stand for what is in the frame, x and y in 0…1, brightest first. */
  readonly places: readonly { readonly x: number; readonly y: number }[]
}

/** What operations may know of a frame; plain data, made once at opening. No operation looks at pixels. */
export interface FrameFacts {
  /** Mean `cameraRgb` over unclipped overview pixels. */
  readonly meanCameraRgb: readonly [number, number, number]
  /** Opening neutral as (log2 R/G, log2 B/G) of the plain mean: the reference of brightness hold. */
  readonly referenceNeutral: readonly [number, number]
  readonly noise: NoiseModel
  /** XYZ (D65-relative) from `cameraRgb` balanced, row-major, or null where the file has none. */
  readonly cameraToXyz: readonly number[] | null
  /** (log2 R/G, log2 B/G) of a grey in D65 daylight by that matrix, through the glass the camera was made with; absent without one. */
  readonly daylightNeutral?: readonly [number, number]
  /** Whether a camera or a program had shaped tones and colours before; absent for raw files. */
  readonly developed?: boolean
  /** Cut-on wavelength in nm as stated; null is full spectrum, undefined unknown. */
  readonly filterNm: number | null | undefined
  /** Width divided by height. */
  readonly aspect: number
}

/** What the camera wrote about the exposure; absent fields are undefined. */
export interface ExposureMetadata {
  readonly make?: string
  readonly model?: string
  readonly lens?: string
  readonly iso?: number
  readonly exposureTimeS?: number
  readonly apertureF?: number
  readonly focalLengthMm?: number
  /** Local camera time as written, `YYYY:MM:DD HH:MM:SS`. */
  readonly takenAt?: string
  readonly artist?: string
  readonly copyright?: string
  readonly description?: string
  readonly gps?: { readonly latitudeDeg: number; readonly longitudeDeg: number; readonly altitudeM?: number }
}

/** What a frame was before it was opened, where a camera or a program had developed it already. */
export interface Developed {
  readonly format: 'JPEG' | 'TIFF'
  /** Bits per channel in the file. */
  readonly bits: 8 | 16
  /** Name of the colour space its numbers were in, e.g. of the embedded profile. */
  readonly space: string
}

export interface Frame {
  readonly fileName: string
  /** SHA-256 of the file content, hex. */
  readonly fingerprint: string
  readonly sensor: SensorData
  readonly overview: Overview
  /** The smoothed cells of the overview: what judgements about the whole frame start from. */
  readonly cells: CellGrid
  readonly facts: FrameFacts
  readonly metadata: ExposureMetadata
  /** Absent for raw files. */
  readonly developed?: Developed
  /** Sentences about damage that decoding survived. */
  readonly warnings: readonly string[]
}
