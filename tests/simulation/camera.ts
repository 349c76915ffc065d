// What a sensor without infrared-cut filter records behind a long-pass filter, from open spectra: the light of scenes that
// the neutral work is tried on. Numbers come from shared tables beside the repository and are null without them.
import { openCsv } from '../support/open-data.ts'

export type Rgb = readonly [number, number, number]
export type Spectrum = readonly number[]
export const filters = [590, 630, 665, 695, 720] as const
export type FilterNm = (typeof filters)[number] | 550 | 780 | 830 | 850
export type SensorName = 'A' | 'B'

function columns(path: string): Record<string, number[]> | null {
  const rows = openCsv(path)
  if (!rows) return null
  return Object.fromEntries(Object.keys(rows[0]).map((name) => [name, rows.map((row) => Number(row[name]))]))
}

const sensors = columns('spectra/cameras_no_ircut_5nm.csv')
const glass = columns('spectra/filters_model_5nm.csv')
const lights = columns('spectra/illuminants_5nm.csv')
const materials = columns('spectra/reflectance_5nm.csv')

/** Whether the spectra are there. */
export const spectraAreHere = Boolean(sensors && glass && lights && materials)

export const light = (name: string): Spectrum => lights![name]
export const reflectance = (name: string): Spectrum => materials![name]

/** The weighted sum of spectra. */
export function mix(...parts: readonly (readonly [number, Spectrum])[]): number[] {
  return parts[0][1].map((_, i) => parts.reduce((sum, [weight, spectrum]) => sum + weight * spectrum[i], 0))
}

export const times = (a: Spectrum, b: Spectrum): number[] => a.map((value, i) => value * b[i])

export type Record3 = (light: Spectrum) => Rgb

/**
 * The recording of a sensor behind a filter: `cameraRgb` of a spectrum in which the perfect diffuser under clear sun and
 * sky (ASTM G173-03 global) has 1 in its largest channel. Sensitivities count photons, hence the factor of wavelength.
 */
export function recording(sensor: SensorName, filterNm: FilterNm): Record3 {
  const channels = ['R', 'G', 'B'].map((c) =>
    sensors![`cam${sensor}_${c}`].map((value, i) => value * glass![filterNm][i] * (350 + 5 * i)),
  )
  const dot = (a: Spectrum, b: Spectrum) => a.reduce((sum, value, i) => sum + value * b[i], 0)
  const white = Math.max(...channels.map((channel) => dot(channel, light('sun_sky_global_AM15'))))
  return (spectrum) => channels.map((channel) => dot(channel, spectrum) / white) as unknown as Rgb
}
