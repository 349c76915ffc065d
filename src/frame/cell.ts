// The smallest square of photosites that holds every colour in the same number wherever it lies in the pattern: 2×2 for
// Bayer, 3×3 for a common 6×6 array, one photosite for one channel and for three-channel data. Means over whole cells
// need no demosaicing.
import type { Cfa, SensorData } from './frame.ts'

export interface Cell {
  /** Side in sensor pixels. */
  readonly size: number
  /** Samples of red, green and blue in one cell. */
  readonly counts: readonly [number, number, number]
}

function countsAt(cfa: Cfa, left: number, top: number, size: number): [number, number, number] {
  const counts: [number, number, number] = [0, 0, 0]
  for (let y = top; y < top + size; y++) {
    for (let x = left; x < left + size; x++) {
      counts[cfa.colours[(y % cfa.rows) * cfa.columns + (x % cfa.columns)]]++
    }
  }
  return counts
}

/** The cell of a sensor. Throws a RangeError where a mosaic lacks a colour. */
export function sensorCell(sensor: SensorData): Cell {
  if (sensor.kind === 'linear') return { size: 1, counts: [1, 1, 1] }
  const { cfa } = sensor
  if (cfa.colours.every((colour) => colour === 1)) return { size: 1, counts: [0, 1, 0] }
  const largest = cfa.columns * cfa.rows
  for (let size = 2; size <= largest; size++) {
    const counts = countsAt(cfa, 0, 0, size)
    if (counts.includes(0)) continue
    let even = true
    for (let top = 0; top < cfa.rows * size && even; top += size) {
      for (let left = 0; left < cfa.columns * size && even; left += size) {
        even = countsAt(cfa, left, top, size).every((count, colour) => count === counts[colour])
      }
    }
    if (even) return { size, counts }
  }
  throw new RangeError('This colour filter array does not hold red, green and blue.')
}
