// Mosaics of known light with known photon and read noise, the same on every run.
import type { CfaColour, LevelTable, LinearData, MosaicData } from '../../src/frame/frame.ts'

export const bayer = { columns: 2, rows: 2, colours: [0, 1, 1, 2] as readonly CfaColour[] }
/** The common 6×6 array (from memory): each 3×3 holds 2 red, 5 green, 2 blue. */
export const sixBySix = {
  columns: 6,
  rows: 6,
  // prettier-ignore
  colours: [
    1, 1, 0, 1, 1, 2,
    1, 1, 2, 1, 1, 0,
    2, 0, 1, 0, 2, 1,
    1, 1, 2, 1, 1, 0,
    1, 1, 0, 1, 1, 2,
    0, 2, 1, 2, 0, 1,
  ] as readonly CfaColour[],
}
export const oneChannel = { columns: 1, rows: 1, colours: [1] as readonly CfaColour[] }

/** Uniform numbers 0…1 (mulberry32, public domain). */
export function randomNumbers(seed: number): () => number {
  let state = seed
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32
  }
}

/** Normal numbers of mean 0 and deviation 1 (Box & Muller 1958). */
export function normalNumbers(seed: number): () => number {
  const random = randomNumbers(seed)
  return () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
}

export interface Scene {
  readonly width: number
  readonly height: number
  /** Light of one colour at a place, 1 is saturation. */
  readonly light: (x: number, y: number, colour: CfaColour) => number
  readonly cfa?: MosaicData['cfa']
  readonly black?: LevelTable
  readonly white?: number
  /** None leaves the light as it is. */
  readonly noise?: { readonly fullScaleElectrons: number; readonly readNoiseElectrons: number; readonly seed: number }
}

export const evenBlack = (code: number): LevelTable => ({ columns: 1, rows: 1, codes: [code] })

/** A mosaic of the scene in whole codes, 0…65535, clipped at white. */
export function makeMosaic(scene: Scene): MosaicData {
  const { width, height, light, cfa = bayer, black = evenBlack(512), white = 16383, noise } = scene
  const normal = normalNumbers(noise?.seed ?? 0)
  const codes = new Uint16Array(width * height)
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      let value = light(x, y, cfa.colours[(y % cfa.rows) * cfa.columns + (x % cfa.columns)])
      if (noise) {
        const { fullScaleElectrons: full, readNoiseElectrons: read } = noise
        value += (normal() * Math.sqrt(value * full + read * read)) / full
      }
      const zero = black.codes[(y % black.rows) * black.columns + (x % black.columns)]
      codes[i] = Math.min(Math.max(Math.round(zero + value * (white - zero)), 0), white)
    }
  }
  return { kind: 'mosaic', width, height, codes, cfa, black, white }
}

/** Three-channel data of the scene, without noise. */
export function makeLinear({ width, height, light, white = 16383 }: Scene, black: LinearData['black']): LinearData {
  const codes = new Uint16Array(width * height * 3)
  for (let i = 0; i < codes.length; i++) {
    const channel = (i % 3) as CfaColour
    const pixel = Math.floor(i / 3)
    const value = light(pixel % width, Math.floor(pixel / width), channel)
    codes[i] = Math.min(Math.max(Math.round(black[channel] + value * (white - black[channel])), 0), white)
  }
  return { kind: 'linear', width, height, codes, black, white }
}
