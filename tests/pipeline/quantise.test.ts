import { expect, test } from 'vitest'
import { quantise } from '../../src/pipeline/quantise.ts'

const region = (width: number, height: number, x = 0, y = 0) => ({
  x,
  y,
  width,
  height,
  frameWidth: 4000,
  frameHeight: 3000,
})
const flat = (value: number, pixels: number) => new Float32Array(pixels * 3).fill(value)

function meanAndVariance(codes: ArrayLike<number>): [mean: number, variance: number] {
  const list = Array.from(codes)
  const mean = list.reduce((sum, code) => sum + code, 0) / list.length
  return [mean, list.reduce((sum, code) => sum + (code - mean) ** 2, 0) / list.length]
}

// Triangular dither of ±1 code makes mean and variance of the error independent of the signal: 0 and 1/4 code²
// (Lipshitz, Wannamaker & Vanderkooy, J. Audio Eng. Soc. 40, 1992; from memory).
test.each([0.3, 0.3 + 0.25 / 255, 0.3 + 0.5 / 255, 0.3 + 0.8 / 255])(
  '%f in 8 bit: mean error 0, variance a quarter',
  (level) => {
    const value = Math.fround(level)
    const [mean, variance] = meanAndVariance(quantise(flat(value, 256 * 256), region(256, 256), 8))
    expect(Math.abs(mean - value * 255)).toBeLessThan(0.01)
    expect(Math.abs(variance - 0.25)).toBeLessThan(0.01)
  },
)

test('errors of neighbours and of channels are unrelated', () => {
  const codes = quantise(flat(0.5, 256 * 256), region(256, 256), 16)
  const [mean, variance] = meanAndVariance(codes)
  const correlation = (offset: number) => {
    let sum = 0
    for (let i = 0; i + offset < codes.length; i++) sum += (codes[i] - mean) * (codes[i + offset] - mean)
    return sum / (codes.length - offset) / variance
  }
  for (const offset of [1, 2, 3, 6, 256 * 3, 257 * 3]) expect(Math.abs(correlation(offset))).toBeLessThan(0.015)
})

test('a smooth ramp of 16 codes over 4096 pixels does not band', () => {
  const width = 4096
  const ramp = Float32Array.from({ length: width * 3 }, (_, i) => 0.4 + (Math.floor(i / 3) / width) * (16 / 255))
  const sums = new Float64Array(64)
  let longestRun = 0
  for (let y = 0; y < 64; y++) {
    let run = 0
    const codes = quantise(ramp, region(width, 1, 0, y), 8)
    for (let i = 0; i < codes.length; i++) sums[Math.floor(i / 192)] += codes[i]
    for (let red = 0; red < codes.length; red += 3) {
      run = codes[red] === codes[red - 3] ? run + 1 : 1
      longestRun = Math.max(longestRun, run)
    }
  }
  const idealRun = width / 16
  expect(longestRun).toBeLessThan(idealRun)
  const rises = Array.from(sums.slice(1), (sum, i) => (sum - sums[i]) / (64 * 192))
  for (const rise of rises) expect(Math.abs(rise - 16 / 64)).toBeLessThan(0.05)
})

test('black, white and what lies beyond are exact, without speckle', () => {
  for (const value of [0, -0.2, NaN])
    expect(new Set(quantise(flat(value, 4096), region(64, 64), 8))).toEqual(new Set([0]))
  for (const value of [1, 1.3])
    expect(new Set(quantise(flat(value, 4096), region(64, 64), 16))).toEqual(new Set([65535]))
})

test('a tile equals its part of the whole frame', () => {
  const picture = quantise(flat(0.37, 40 * 30), region(40, 30), 16)
  const tile = quantise(flat(0.37, 40 * 4), region(40, 4, 0, 20), 16)
  expect(tile).toEqual(picture.slice(20 * 40 * 3, 24 * 40 * 3))
})
