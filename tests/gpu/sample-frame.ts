// A small made-up frame for drawing tests: smooth colours with fine detail and a clipped corner, as codes and as overview.
import type { Cfa, FrameFacts, LinearData, MosaicData, Overview } from '../../src/frame/frame.ts'

export const facts: FrameFacts = {
  meanCameraRgb: [0.31, 0.22, 0.17],
  referenceNeutral: [0.5, -0.37],
  noise: { fullScaleElectrons: 40_000, readNoiseElectrons: 4 },
  cameraToXyz: null,
  filterNm: 720,
  aspect: 1.5,
}

export const rggb: Cfa = { columns: 2, rows: 2, colours: [0, 1, 1, 2] }

/** A 6×6 arrangement in which every row and column holds all colours. */
export const sixBySix: Cfa = {
  columns: 6,
  rows: 6,
  colours: [1, 2, 1, 1, 0, 1, 0, 1, 0, 2, 1, 2, 1, 2, 1, 1, 0, 1, 1, 0, 1, 1, 2, 1, 2, 1, 2, 0, 1, 0, 1, 0, 1, 1, 2, 1],
}

/** `cameraRgb` at a sensor pixel: a glow that clips in the middle, bands across, and detail of a few pixels. */
function sceneAt(x: number, y: number): [number, number, number] {
  const glow = 1.4 * Math.exp(-((x - 300) ** 2 + (y - 200) ** 2) / 9000)
  const detail = 0.04 * Math.sin(x * 1.9) * Math.cos(y * 2.3)
  const level = 0.12 + 0.1 * Math.sin(x / 41) + 0.06 * Math.cos(y / 23) + detail
  const tint = 0.3 * Math.sin((x + 2 * y) / 97)
  return [level * (1.4 + tint) + glow, level + 0.8 * glow, level * (0.8 - tint) + 0.6 * glow]
}

/** The scene seen through a filter pattern with unequal black levels: codes of about 14 bits, clipped at white. */
export function sampleMosaic(width: number, height: number, cfa: Cfa = rggb): MosaicData {
  const black = { columns: 2, rows: 2, codes: [512, 520, 516, 508] }
  const white = 15_800
  const codes = new Uint16Array(width * height)
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      const colour = cfa.colours[(y % cfa.rows) * cfa.columns + (x % cfa.columns)]
      const level = black.codes[(y & 1) * 2 + (x & 1)]
      codes[i] = Math.min(Math.max(Math.round(level + sceneAt(x, y)[colour] * (white - level)), 0), white)
    }
  }
  return { kind: 'mosaic', width, height, codes, cfa, black, white }
}

/** The scene as three linear codes to a pixel. */
export function sampleLinear(width: number, height: number): LinearData {
  const codes = new Uint16Array(width * height * 3)
  for (let pixel = 0; pixel < width * height; pixel++) {
    const rgb = sceneAt(pixel % width, Math.floor(pixel / width))
    rgb.forEach((value, c) => (codes[pixel * 3 + c] = Math.min(Math.max(Math.round(100 + value * 60_000), 0), 65_535)))
  }
  return { kind: 'linear', width, height, codes, black: [100, 90, 110], white: 65_535 }
}

/** The scene at the middle of each overview pixel; alpha is its largest channel, at most 1. */
export function sampleOverview(width: number, height: number, scale: number): Overview {
  const rgba = new Float32Array(width * height * 4)
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i += 4) {
      const rgb = sceneAt((x + 0.5) * scale, (y + 0.5) * scale).map((value) => Math.min(value, 1))
      rgba.set([...rgb, Math.max(...rgb)], i)
    }
  }
  return { width, height, rgba, scale }
}
