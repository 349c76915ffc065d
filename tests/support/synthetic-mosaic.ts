// Sensor data and facts of an invented frame for tests of what comes behind decoding.
import type { FrameFacts, MosaicData } from '../../src/frame/frame.ts'

export const mosaicFacts: FrameFacts = {
  meanCameraRgb: [0.3, 0.1, 0.05],
  referenceNeutral: [1.58, -1],
  noise: { fullScaleElectrons: 50_000, readNoiseElectrons: 3 },
  cameraToXyz: null,
  filterNm: 720,
  aspect: 1.5,
}

/** A Bayer mosaic of slopes and texture, red strongest as behind a 720 nm filter, its lower right corner clipped. */
export function syntheticMosaic(width: number, height: number): MosaicData {
  const strengths = [0.9, 0.32, 0.32, 0.2]
  const codes = new Uint16Array(width * height)
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      const level =
        (0.1 + (0.9 * x) / width) * (0.3 + (0.9 * y) / height) + 0.03 * Math.sin(x * 0.7) * Math.cos(y * 0.9)
      codes[i] = Math.min(512 + 15_000 * level * strengths[2 * (y & 1) + (x & 1)], 15_000)
    }
  }
  const black = { columns: 1, rows: 1, codes: [512] }
  return {
    kind: 'mosaic',
    width,
    height,
    codes,
    cfa: { columns: 2, rows: 2, colours: [0, 1, 1, 2] },
    black,
    white: 15_000,
  }
}
