// A rectangle of sensor codes with margins, cut out on the CPU: whole mosaics exceed the texture limit of weak devices.
// Beyond the sensor's edges rows and columns are mirrored about the edge photosite, which keeps their place in the pattern.
import type { SensorData } from '../frame/frame.ts'

export interface CodeTile {
  /** Sensor position of the first code; may be negative. */
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
  /** `samples` codes per photosite, row-major. */
  readonly codes: Uint16Array<ArrayBuffer>
  readonly samples: 1 | 3
}

const mirrored = (index: number, size: number) => {
  const period = Math.max(2 * (size - 1), 1)
  const wrapped = ((index % period) + period) % period
  return Math.min(wrapped, period - wrapped)
}

/** Cuts `width × height` photosites from (x, y), which may reach beyond the sensor on all sides. */
export function cutTile(sensor: SensorData, x: number, y: number, width: number, height: number): CodeTile {
  const samples = sensor.kind === 'linear' ? 3 : 1
  const codes = new Uint16Array(width * height * samples)
  const first = Math.max(x, 0)
  const end = Math.min(x + width, sensor.width)
  const columns = Array.from({ length: width }, (_, column) => x + column)
  const beyond = columns.filter((column) => column < first || column >= end)
  for (let row = 0; row < height; row++) {
    const from = mirrored(y + row, sensor.height) * sensor.width
    const to = row * width - x
    codes.set(sensor.codes.subarray((from + first) * samples, (from + end) * samples), (to + first) * samples)
    for (const column of beyond) {
      const source = (from + mirrored(column, sensor.width)) * samples
      codes.set(sensor.codes.subarray(source, source + samples), (to + column) * samples)
    }
  }
  return { x, y, width, height, codes, samples }
}
