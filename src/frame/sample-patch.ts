// A sample of the sensor under the neutral picker: mean `cameraRgb` of the whole unclipped cells in a disc and how far it
// can be trusted, in numbers and in words. Black is judged on the mean, because single dark photosites are mostly noise.
import { readDisc, type SampledCells } from './disc-cells.ts'
import type { NoiseModel, SensorData } from './frame.ts'
import { type PickError, pickError } from './pick-error.ts'
import { withoutOutliers } from './without-outliers.ts'

type Reliability = 'good' | 'fair' | 'poor' | 'too dark' | 'clipped'

export interface PatchSample {
  /** Mean `cameraRgb`, all above 0, or null where no neutral follows from it. */
  readonly meanCameraRgb: readonly [number, number, number] | null
  /** Whole unclipped cells in the mean. */
  readonly cells: number
  /** Share of the disc's cells that are clipped, 0…1. */
  readonly clippedShare: number
  /** Expected error of the neutral, one standard deviation in stops; infinite where there is no mean. */
  readonly errorStops: number
  /** Standard deviation of the cells beyond noise, in stops. */
  readonly spreadStops: number
  readonly twoMaterials: boolean
  readonly reliability: Reliability
  /** One line for people. */
  readonly sentence: string
}

/** Limits of the words (our choice, checked by simulation): error in stops and clipped share. */
const good = { errorStops: 0.03, clippedShare: 0.2 }
const fair = { errorStops: 0.1, clippedShare: 0.5 }
/** A mean below this many standard deviations of its noise is lost in it: of black channels one in thirty thousand comes so high. */
const darkSigmas = 4

const reasons: Record<PickError['because'], string> = {
  noise: 'it is dark for so few cells; take a larger sample or a brighter place',
  spread: 'the colour varies inside the sample; take a larger sample or a plainer place',
  clipping: 'part of it is clipped; move to a darker place',
  'two materials': 'two materials lie in the sample; make it smaller or move it',
}

function stopsText(stops: number): string {
  return `±${stops.toFixed(stops < 0.01 ? 3 : stops < 0.1 ? 2 : 1)} stop`
}

function judge(error: PickError, cells: number, clippedShare: number): Pick<PatchSample, 'reliability' | 'sentence'> {
  const within = (limit: typeof good) => error.errorStops < limit.errorStops && clippedShare < limit.clippedShare
  const reliability = within(good) ? 'good' : within(fair) ? 'fair' : 'poor'
  const clipped = clippedShare > 0 ? `${Math.max(1, Math.round(clippedShare * 100))} % clipped` : 'none clipped'
  const facts = `${cells} ${cells === 1 ? 'cell' : 'cells'}, ${clipped}, ${stopsText(error.errorStops)}`
  if (reliability === 'good') return { reliability, sentence: `Good pick: ${facts}.` }
  const because = clippedShare >= fair.clippedShare ? 'clipping' : error.because
  return { reliability, sentence: `${reliability === 'fair' ? 'Fair' : 'Poor'} pick: ${facts}; ${reasons[because]}.` }
}

/**
 * Samples a disc of `radiusPx` sensor pixels about `centre` (0…1 of the upright frame, x then y). The nearest cell is
 * always part of it.
 */
export function samplePatch(
  sensor: SensorData,
  noise: NoiseModel,
  centre: readonly [number, number],
  radiusPx: number,
): PatchSample {
  return judgeSample(withoutOutliers(readDisc(sensor, centre, radiusPx)), noise)
}

/** The mean of sampled cells and how far it can be trusted. */
export function judgeSample(sampled: SampledCells, noise: NoiseModel): PatchSample {
  const { rgb, cells, allCells, cell } = sampled
  const clippedShare = 1 - cells / allCells
  const without = {
    meanCameraRgb: null,
    cells,
    clippedShare,
    spreadStops: 0,
    twoMaterials: false,
    errorStops: Infinity,
  }
  if (cells === 0) {
    return {
      ...without,
      reliability: 'clipped',
      sentence: 'Clipped: every cell here is saturated; move to a darker place.',
    }
  }
  const mean: [number, number, number] = [0, 0, 0]
  for (let i = 0; i < rgb.length; i++) mean[i % 3] += rgb[i]
  for (let channel = 0; channel < 3; channel++) mean[channel] /= cells

  const { fullScaleElectrons: full, readNoiseElectrons: read } = noise
  const drowned = (channel: number) => {
    const photosites = cells * Math.max(cell.counts[channel], 1)
    return (
      mean[channel] < (darkSigmas * Math.sqrt((Math.max(mean[channel], 0) * full + read * read) / photosites)) / full
    )
  }
  const lost = [0, 1, 2].filter(drowned).map((channel) => ['red', 'green', 'blue'][channel])
  const usable = Math.min(...mean) > 0
  const error = usable ? pickError(sampled, mean, noise) : null
  const known = error
    ? {
        ...without,
        meanCameraRgb: mean,
        errorStops: error.errorStops,
        spreadStops: error.spreadStops,
        twoMaterials: error.two !== null,
      }
    : without
  if (lost.length || !error) {
    const sentence = `Too dark: ${lost.join(' and ')} cannot be told from noise here; take a larger sample or a brighter place.`
    return { ...known, reliability: 'too dark', sentence }
  }
  return { ...known, ...judge(error, cells, clippedShare) }
}
