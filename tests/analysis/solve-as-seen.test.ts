// Warmth as seen against values computed by us with a separate program, and against what the finished colour then is.
import { describe, expect, it, test } from 'vitest'
import { solveAsSeen } from '../../src/analysis/solve-as-seen.ts'
import { oklabToWorking, workingToOklab } from '../../src/colour/oklab.ts'
import { transform } from '../../src/math/mat3.ts'
import { randomNumbers } from '../support/synthetic-sensor.ts'

type Finish = Parameters<typeof solveAsSeen>[0]['finish']

const plain: Finish = (rgb) => rgb
const exchanged: Finish = ([r, g, b]) => [b, g, r]
const turned =
  (deg: number): Finish =>
  (rgb) => {
    const [lightness, a, b] = workingToOklab(rgb)
    const [cos, sin] = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)]
    return oklabToWorking([lightness, a * cos - b * sin, a * sin + b * cos])
  }

/** C/L along the axes warm and magenta in thousandths, of the finished grey with the gains on. */
function seen(finish: Finish, { redStops, blueStops, commonStops }: ReturnType<typeof solveAsSeen>, level = 0.18) {
  const all = level * 2 ** commonStops
  const [lightness, a, b] = workingToOklab(finish([all * 2 ** redStops, all, all * 2 ** blueStops]))
  const hue = (80 * Math.PI) / 180
  return {
    lightness,
    warm: ((a * Math.cos(hue) + b * Math.sin(hue)) / lightness) * 1000,
    magenta: ((a * Math.sin(hue) - b * Math.cos(hue)) / lightness) * 1000,
  }
}

describe('computed separately, neutral .18', () => {
  it.each([
    { name: 'warm +50', finish: plain, warm: 50, magenta: 0, stops: [0.1409, -0.4312, -0.0199] },
    { name: 'warm +50 after an exchange', finish: exchanged, warm: 50, magenta: 0, stops: [-0.4312, 0.1409, -0.0199] },
    { name: 'magenta +50', finish: plain, warm: 0, magenta: 50, stops: [0.308, 0.1747, -0.1256] },
    {
      name: 'warm +20 after a turn by 90°',
      finish: turned(90),
      warm: 20,
      magenta: 0,
      stops: [0.1238, 0.0685, -0.0487],
    },
  ])('$name', ({ finish, warm, magenta, stops }) => {
    const { redStops, blueStops, commonStops, reached } = solveAsSeen({ finish, level: 0.18, warm, magenta })
    expect(reached).toBe(true)
    expect([redStops, blueStops, commonStops]).toEqual(stops.map((value) => expect.closeTo(value, 4)))
  })
})

test('whatever the chain, the finished colour moves as asked and keeps its lightness', () => {
  const random = randomNumbers(8)
  for (let n = 0; n < 60; n++) {
    const turn = turned(random() * 360)
    const swap = random() < 0.5
    const finish: Finish = (rgb) => turn((swap ? exchanged(rgb) : rgb) as [number, number, number])
    const [warm, magenta] = [(random() - 0.5) * 120, (random() - 0.5) * 120]
    const before = seen(finish, { redStops: 0, blueStops: 0, commonStops: 0, reached: true })
    const after = seen(finish, solveAsSeen({ finish, level: 0.18, warm, magenta }))
    // What counts as reached: a tenth of a unit.
    expect(Math.abs(after.warm - before.warm - warm)).toBeLessThan(0.1)
    expect(Math.abs(after.magenta - before.magenta - magenta)).toBeLessThan(0.1)
    expect(after.lightness).toBeCloseTo(before.lightness, 4)
  }
})

describe('what a chain cannot show', () => {
  const mono: Finish = ([r, g, b]) => [(r + g + b) / 3, (r + g + b) / 3, (r + g + b) / 3]
  it('black and white stays as it is, and says so', () => {
    const { reached, ...gains } = solveAsSeen({ finish: mono, level: 0.18, warm: 30, magenta: 0 })
    expect(reached).toBe(false)
    expect(Object.values(gains)).toEqual([0, 0, 0])
  })

  it('a lossy mix stops at the last reachable value', () => {
    const mix = [0.52, 0, 0.48, 0, 1, 0, 0.48, 0, 0.52]
    const finish: Finish = (rgb) => transform(mix, rgb)
    const asked = { finish, level: 0.18, warm: 80, magenta: 0 }
    const answer = solveAsSeen(asked)
    expect(answer.reached).toBe(false)
    const part = seen(finish, answer)
    expect(part.warm).toBeGreaterThan(0)
    expect(part.warm).toBeLessThan(80)
    expect(part.magenta).toBeCloseTo(0, 0)
    expect(solveAsSeen({ ...asked, warm: part.warm * 0.95 }).reached).toBe(true)
    expect(solveAsSeen({ ...asked, warm: part.warm * 1.05 }).reached).toBe(false)
  })
})

test('no shift needs no gains', () => {
  const { redStops, blueStops, commonStops } = solveAsSeen({ finish: turned(40), level: 0.18, warm: 0, magenta: 0 })
  expect([redStops, blueStops, commonStops]).toEqual([0, 0, 0])
})
