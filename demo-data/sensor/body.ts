// The two converted cameras of the roll: levels, noise and the colour matrix their makers would have written for visible light.
// Names are invented; electron numbers are typical of sensors of this size (common practice, no source).
import type { SensorName } from '../spectra.ts'

/** Colours of the four photosites of a cell in reading order; R red, G green, B blue. */
export type CfaPhase = 'RGGB' | 'GRBG' | 'GBRG' | 'BGGR'

export interface Body {
  readonly make: string
  readonly model: string
  /** Code of saturation. */
  readonly white: number
  /** Electrons between black and white at the base sensitivity. */
  readonly fullScaleElectrons: number
  readonly baseIso: number
  readonly readNoiseElectrons: number
  /** Photosites that stick out, as a share of all. */
  readonly hotShare: number
  /** Masked photosites above and left of the picture; even, so that the filter pattern starts over at the picture. */
  readonly border: { readonly top: number; readonly left: number }
  /**
   * XYZ to camera under D65, row-major: least-squares fit over the roll's reflectances of sensor × infrared-cut curve to the
   * CIE 1931 observer in the analytic form of Wyman, Sloan & Shirley (JCGT 2013); mean residual 2 %.
   */
  readonly colourMatrix: readonly number[]
  /** Camera RGB of daylight through the original infrared-cut glass: what such a camera still writes as its white balance. */
  readonly daylightNeutral: readonly [number, number, number]
}

export const bodies: Record<SensorName, Body> = {
  A: {
    make: 'Heron Mere',
    model: 'Simulated A',
    white: 15871,
    fullScaleElectrons: 45_000,
    baseIso: 100,
    readNoiseElectrons: 3,
    hotShare: 0,
    border: { top: 16, left: 32 },
    colourMatrix: [1.4762, -0.5132, -0.1769, -0.593, 1.3853, 0.1638, -0.0521, 0.0894, 0.5497],
    daylightNeutral: [0.6937, 1, 0.6346],
  },
  B: {
    make: 'Heron Mere',
    model: 'Simulated B',
    white: 4095,
    fullScaleElectrons: 24_000,
    baseIso: 200,
    readNoiseElectrons: 2.6,
    hotShare: 6e-6,
    border: { top: 0, left: 0 },
    colourMatrix: [1.2553, -0.3829, -0.1398, -0.2588, 1.2258, 0.0186, -0.0804, 0.2572, 0.5755],
    daylightNeutral: [0.6541, 1, 0.8029],
  },
}
