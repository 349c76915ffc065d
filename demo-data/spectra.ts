// The spectra behind the demo roll as typed arrays: 350–1100 nm in 5 nm steps (151 values), sources in spectra/README.md.
// Everything is resampled to one grid so that an integral is a plain sum.
import filters from './spectra/filters.json'
import illuminants from './spectra/illuminants.json'
import reflectances from './spectra/reflectances.json'
import sensors from './spectra/sensors.json'

export type FilterName = keyof typeof filters.curves
export type IlluminantName = keyof typeof illuminants.curves
export type ReflectanceName = keyof typeof reflectances.curves
export type SensorName = 'A' | 'B'

/** Wavelength of grid index `i` in nm. */
export function wavelengthNm(i: number): number {
  return reflectances.startNm + i * reflectances.stepNm
}

/** Transmission 0…1 of a long-pass filter. */
export function transmission(name: FilterName): readonly number[] {
  return filters.curves[name]
}

/** Spectral irradiance in W/m²/nm. */
export function illuminant(name: IlluminantName): readonly number[] {
  return illuminants.curves[name]
}

/** Reflectance 0…1. */
export function reflectance(name: ReflectanceName): readonly number[] {
  return reflectances.curves[name]
}

/** Relative sensitivities of a sensor without infrared-cut filter, in the order red, green, blue. */
export function sensitivities(name: SensorName): readonly [readonly number[], readonly number[], readonly number[]] {
  const c = sensors.curves
  return name === 'A' ? [c.camA_R, c.camA_G, c.camA_B] : [c.camB_R, c.camB_G, c.camB_B]
}
