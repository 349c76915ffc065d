// Light to codes: exposure, electrons, photon and read noise, one colour per photosite, quantisation and clipping.
// Noise is a hash of the photosite's place, so a strip painted alone equals the same rows of the whole frame.
import { hash } from '../paint/hash.ts'
import type { Band } from '../paint/canvas.ts'
import type { Size } from '../paint/scene.ts'
import type { Body, CfaPhase } from './body.ts'
import { type HotSpot, lensGain } from './lens.ts'
import { type Orientation, sensorColumn, sensorRow } from './orientation.ts'

export interface Exposure {
  readonly phase: CfaPhase
  /** Black codes of the four photosites of a cell in reading order. */
  readonly black: readonly [number, number, number, number]
  readonly orientation: Orientation
  readonly iso: number
  /** White in full sun lands 2^exposureEv × saturation. */
  readonly exposureEv: number
  readonly hotSpot?: HotSpot
}

const gaussSize = 16384

/** Quantiles of the standard normal distribution, scaled to variance 1: a table instead of two logarithms per photosite. */
const gauss = (() => {
  const table = new Float32Array(gaussSize)
  const step = 1e-4
  let cumulative = 0
  let index = 0
  for (let x = -5; index < gaussSize && x < 5; x += step) {
    cumulative += (step * Math.exp(-(x * x) / 2)) / Math.sqrt(2 * Math.PI)
    while (index < gaussSize && cumulative >= (index + 0.5) / gaussSize) table[index++] = x
  }
  const variance = table.reduce((s, v) => s + v * v, 0) / gaussSize
  return table.map((v) => v / Math.sqrt(variance))
})()

/** Electrons between black and white at the exposure's sensitivity. */
export function fullScaleElectrons(body: Body, exposure: Exposure): number {
  return (body.fullScaleElectrons * body.baseIso) / exposure.iso
}

/** A code for `mean` electrons (≥ 0): normal approximation of the Poisson law plus read noise, `h` a hash of the place. */
function noisyElectrons(mean: number, readNoise: number, h: number): number {
  return mean + gauss[h & (gaussSize - 1)] * Math.sqrt(mean + readNoise * readNoise)
}

/** Codes of the band's rows in upright order, one per pixel, for the colour the sensor has there. */
export function exposeBand(band: Band, size: Size, body: Body, exposure: Exposure, seed: number): Uint16Array {
  const codes = new Uint16Array(band.r.length)
  const full = fullScaleElectrons(body, exposure)
  const planes = [band.r, band.g, band.b]
  const colour = [...exposure.phase].map((letter) => 'RGB'.indexOf(letter))
  const gain = 2 ** exposure.exposureEv
  const hotLimit = Math.round(body.hotShare * 262144)
  for (let y = band.y0, i = 0; y < band.y1; y++) {
    for (let x = 0; x < band.width; x++, i++) {
      const sx = sensorColumn(size, exposure.orientation, x, y)
      const sy = sensorRow(size, exposure.orientation, x, y)
      const place = (sy & 1) * 2 + (sx & 1)
      const c = colour[place]
      const level = planes[c][i] * gain * lensGain(size, exposure.hotSpot, x, y, c)
      const h = hash(sx, sy, seed)
      let electrons = noisyElectrons(level * full, body.readNoiseElectrons, h)
      if (h >>> 14 < hotLimit) electrons += full * (0.15 + 0.6 * ((h & 255) / 255))
      const black = exposure.black[place]
      const code = Math.round(black + (electrons / full) * (body.white - black))
      codes[i] = code < 0 ? 0 : code > body.white ? body.white : code
    }
  }
  return codes
}

/** Codes of a photosite that no light reaches, at raw position (rx, ry); `place` is its place in the cell. */
export function maskedCode(
  body: Body,
  exposure: Exposure,
  rx: number,
  ry: number,
  place: number,
  seed: number,
): number {
  const black = exposure.black[place]
  const electrons = noisyElectrons(0, body.readNoiseElectrons, hash(rx, ry, seed, 7))
  return Math.max(0, Math.round(black + (electrons / fullScaleElectrons(body, exposure)) * (body.white - black)))
}
