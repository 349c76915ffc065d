// Which cells a round sample reads, by seeded places; what is right follows from the geometry.
import { describe, expect, it } from 'vitest'

import { sensorCell } from '../../src/frame/cell.ts'
import { readDisc } from '../../src/frame/disc-cells.ts'
import type { SensorData } from '../../src/frame/frame.ts'
import { bayer, makeLinear, makeMosaic, randomNumbers, sixBySix } from '../support/synthetic-sensor.ts'

const size = { width: 156, height: 102 }
/** Every photosite tells where it lies. */
const light = (x: number, y: number) => 0.1 + (Math.floor(x / 6) * 17 + Math.floor(y / 6)) / 1000
const sensors: [string, SensorData][] = [
  ['Bayer', makeMosaic({ ...size, cfa: bayer, light })],
  ['6×6', makeMosaic({ ...size, cfa: sixBySix, light })],
  ['three channels', makeLinear({ ...size, light }, [0, 0, 0])],
]

describe.each(sensors)('on %s', (_, sensor) => {
  const { size: side } = sensorCell(sensor)

  it('a disc no wider than a cell is the cell under it, wherever it lies', () => {
    const random = randomNumbers(11)
    const places = Array.from({ length: 500 }, () => [random(), random()] as const)
    // The middle of the frame is a corner of four cells.
    for (const [x, y] of [...places, [0.5, 0.5] as const, [0, 0] as const, [1, 1] as const]) {
      const { rgb, allCells } = readDisc(sensor, [x, y], (side / 2) * random())
      expect(allCells).toBe(1)
      const [column, row] = [Math.min(x * size.width, size.width - 1), Math.min(y * size.height, size.height - 1)]
      const reach = 1e-4 + (x === 0.5 ? 0.02 : 0)
      expect(Math.abs(rgb[1] - light(column, row))).toBeLessThan(reach)
    }
  })

  it('a wider one is the cells whose centres lie in it', () => {
    const random = randomNumbers(12)
    const [across, down] = [Math.floor(size.width / side), Math.floor(size.height / side)]
    for (let n = 0; n < 100; n++) {
      // At the very edge a disc is held to the outermost cells.
      const [x, y, radius] = [0.1 + 0.8 * random(), 0.1 + 0.8 * random(), side * (1 + 8 * random())]
      let within = 0
      for (let j = 0; j < down; j++) {
        for (let i = 0; i < across; i++) {
          const away = Math.hypot((i + 0.5) * side - x * size.width, (j + 0.5) * side - y * size.height)
          if (away <= radius) within++
        }
      }
      expect(readDisc(sensor, [x, y], radius).allCells).toBe(within)
    }
  })
})
