// Aerial perspective: colours fade towards the colour of the air with distance. Haze scatters less at longer wavelengths,
// so each channel sees as far as its own mean wavelength allows; that is why infrared pictures have clear distances.
import type { Palette } from '../light/triplets.ts'
import type { Brush } from './brush.ts'

export interface Air {
  /** Colour of infinitely deep air, linear camera RGB. */
  readonly r: number
  readonly g: number
  readonly b: number
  /** Distance in metres over which 1/e of the contrast is left, per channel. */
  readonly rangeR: number
  readonly rangeG: number
  readonly rangeB: number
}

/** Exponent of aerosol extinction with wavelength: Ångström, 1.3 for continental haze (handbook value, from memory). */
const angstromExponent = 1.3

/**
 * Air for a palette. `rangeM` is the range at 550 nm in metres (clear: 2600–11000). The veil's colour is `sun` × sunlight +
 * `sky` × skylight + `overcast` × overcast light on white.
 */
export function createAir(palette: Palette, rangeM: number, sun: number, sky: number, overcast = 0): Air {
  const t = palette.of('white').t
  const range = palette.effectiveNm.map((nm) => rangeM * (nm / 550) ** angstromExponent)
  return {
    r: sun * t[0] + sky * t[3] + overcast * t[6],
    g: sun * t[1] + sky * t[4] + overcast * t[7],
    b: sun * t[2] + sky * t[5] + overcast * t[8],
    rangeR: range[0],
    rangeG: range[1],
    rangeB: range[2],
  }
}

/** Fades the brush by `distanceM` of air. */
export function throughAir(brush: Brush, air: Air, distanceM: number): void {
  const kr = Math.exp(-distanceM / air.rangeR)
  const kg = Math.exp(-distanceM / air.rangeG)
  const kb = Math.exp(-distanceM / air.rangeB)
  brush.r = brush.r * kr + air.r * (1 - kr)
  brush.g = brush.g * kg + air.g * (1 - kg)
  brush.b = brush.b * kb + air.b * (1 - kb)
}
