// The kelvin scale among gains: where black bodies lie for this camera, the stretch that is usually called the scale, and what a
// neutral reads on it. Infrared neutrals mostly lie beyond it, so that has words of its own.
import { type CameraWhite, chromaticityOfGains, gainsOfChromaticity } from '../../colour/camera-white.ts'
import { planckianChromaticity } from '../../colour/planckian-locus.ts'
import { type BeyondScale, temperatureDomain, temperatureOf } from '../../colour/temperature.ts'
import type { NeutralGains } from '../../edits/marks.ts'
import type { FrameFacts } from '../../frame/frame.ts'
import { formatNumber } from '../../text/format-number.ts'

/** The usual range of kelvin scales (common practice, no source). */
const usualKelvin = [2000, 50_000] as const
/** Where the line begins and ends: below, nothing glows white; above, it hardly moves any more (our choice). */
const lineKelvin = [1000, 1_000_000] as const
/** Points of the line, evenly spread in mired. */
const points = 60

export interface KelvinScale {
  readonly camera: CameraWhite
  /** The line of black bodies, cold to hot, as far as the camera's matrix gives it gains. */
  readonly line: readonly NeutralGains[]
  /** The usual stretch of it, and its ends where the matrix reaches them. */
  readonly usual: readonly NeutralGains[]
  readonly ends: readonly { readonly kelvin: number; readonly gains: NeutralGains }[]
}

const gainsOfKelvin = (camera: CameraWhite, kelvin: number) =>
  gainsOfChromaticity(camera, planckianChromaticity(kelvin))

function stretch(camera: CameraWhite, [from, to]: readonly [number, number]): NeutralGains[] {
  const [cold, hot] = [1 / from, 1 / to]
  return Array.from({ length: points }, (_, i) => {
    return gainsOfKelvin(camera, 1 / (cold + ((hot - cold) * i) / (points - 1)))
  }).filter((gains) => gains !== null)
}

/** The scale of a frame's camera, or null where its file names no matrix that black bodies can be seen by. */
export function kelvinScale({ cameraToXyz, daylightNeutral }: FrameFacts): KelvinScale | null {
  if (!cameraToXyz || !daylightNeutral) return null
  const camera = { cameraToXyz, daylightNeutral }
  const usual = stretch(camera, usualKelvin)
  const ends = usualKelvin.flatMap((kelvin) => {
    const gains = gainsOfKelvin(camera, kelvin)
    return gains ? [{ kelvin, gains }] : []
  })
  return usual.length > 0 ? { camera, line: stretch(camera, lineKelvin), usual, ends } : null
}

const why: Record<BeyondScale, string> = {
  'too cold': `colder than ${kelvinText(temperatureDomain.from)}`,
  'too hot': `hotter than ${kelvinText(temperatureDomain.to)}`,
  'off the line': 'too far off the line of black bodies',
}
/** From this far on it says how far: a shorter way counts as none (our choice). */
const leastBeyondStops = 0.05

/** e.g. 6504 → "6,504 K". */
export function kelvinText(kelvin: number): string {
  return `${Math.round(kelvin).toLocaleString('en')} K`
}

/** Smallest distance of a neutral from the usual stretch, in stops. */
function stopsFromUsual({ usual }: KelvinScale, { redStops, blueStops }: NeutralGains): number {
  return Math.min(...usual.map((gains) => Math.hypot(gains.redStops - redStops, gains.blueStops - blueStops)))
}

/** What a neutral reads: temperature and distance from the line (CIE 1960), and how far beyond the usual scale it lies and why. */
export function kelvinWords(scale: KelvinScale, gains: NeutralGains): string {
  const light = chromaticityOfGains(scale.camera, gains)
  const reading = light ? temperatureOf(light) : null
  const away = stopsFromUsual(scale, gains)
  const beyond = `Beyond the scale by ${formatNumber(away, 1)} stop`
  if (!reading) return `${beyond}: no visible light is like it`
  if (reading === 'too hot' && away < leastBeyondStops)
    return `Hotter than ${kelvinText(temperatureDomain.to)}, too blue for kelvin to be told`
  if (typeof reading === 'string') return `${beyond}: ${why[reading]}`
  const words = `${kelvinText(reading.kelvin)}, Duv ${formatNumber(reading.duv, 3, true)}`
  const isUsual = reading.kelvin >= usualKelvin[0] && reading.kelvin <= usualKelvin[1]
  return isUsual || away < leastBeyondStops ? words : `${beyond}: ${words}`
}
