// The noise model of a developed file. What is seen in its pixels is too little twice over: cameras smooth noise away, and JPEG
// shares colour among neighbours, so that they are not as many opinions as pixels. Rounding to codes comes on top.
import type { NoiseModel, SensorData } from '../frame/frame.ts'
import { estimateNoise } from '../frame/noise-model.ts'
import type { Rounding } from '../frame/rounding.ts'
import type { Curve } from './icc-reader.ts'
import { linearTable } from './linearise.ts'

/** Pixels that share one opinion on colour: 2×2 in the common subsampling of JPEG; demosaiced pixels of a TIFF about as many (our choice). */
const sharing = 4

/**
 * Variance of R − G and B − G after rounding to luminance and chroma (ITU-T T.871: 1.402, 1.772, 0.344, 0.714), in twelfths of a
 * step squared, and after rounding two channels once more.
 */
const ofChroma = ((1.402 + 0.714) ** 2 + 0.344 ** 2 + (1.772 + 0.344) ** 2 + 0.714 ** 2) / 2
const ofTwoChannels = 2

export interface Coding {
  readonly bits: 8 | 16
  /** For JPEG the quantiser of the mean chroma of a block; null where codes were not compressed. */
  readonly chromaQuantiser: number | null
}

/** A block's mean is an eighth of what the quantiser rounds (ITU-T T.81 A.3.3); its error adds to that of rounding to whole codes. */
function roundingOf(curve: Curve, { bits, chromaQuantiser }: Coding): Rounding | undefined {
  if (bits === 16) return undefined
  const levels = [...linearTable(curve, bits)]
  if (chromaQuantiser === null) return { levels, factor: 1, isDithered: true }
  const chroma = ofChroma * (1 + (chromaQuantiser / 8) ** 2)
  return { levels, factor: (chroma + ofTwoChannels) / ofTwoChannels, isDithered: false }
}

/** `curve` decodes green; `iso` as for the estimate. */
export function developedNoise(sensor: SensorData, curve: Curve, coding: Coding, iso?: number): NoiseModel {
  const seen = estimateNoise(sensor, iso)
  const rounding = roundingOf(curve, coding)
  const noise = {
    fullScaleElectrons: seen.fullScaleElectrons / sharing,
    readNoiseElectrons: seen.readNoiseElectrons / Math.sqrt(sharing),
  }
  return rounding ? { ...noise, rounding } : noise
}
