// Warmth as seen through real chains and the reference engine. Gains: values computed by us with a separate program. Colour
// differences: CIEDE2000 as colorjs.io computes it, from the encoded picture; .5 is our target.
import Color from 'colorjs.io'
import { describe, expect, it, test } from 'vitest'
import { RED_BLUE_EXCHANGE } from '../../src/colour/mix-matrices.ts'
import { oklabToWorking, workingToOklab } from '../../src/colour/oklab.ts'
import { addStep, type Chain, withProbe } from '../../src/edits/stack.ts'
import { determinant, invert, transform } from '../../src/math/mat3.ts'
import { lutSupply } from '../../src/operations/colour-lut.ts'
import type { Table } from '../../src/operations/define.ts'
import { writeBands } from '../../src/operations/hue-bands.ts'
import type { Values } from '../../src/operations/values.ts'
import { describe as describeChain } from '../../src/pipeline/describe.ts'
import { renderOnCpu } from '../../src/pipeline/render-on-cpu.ts'
import { neutralOutlook } from '../../src/workbench/neutral-outlook.ts'
import { plainFacts } from '../support/apply-operation.ts'
import { randomNumbers } from '../support/synthetic-sensor.ts'

/** A neutral far from any daylight, as behind a 590 nm filter. */
const from = { redStops: -1.6, blueStops: 0.85 }

function chainOf(...steps: readonly (readonly [operation: string, values: Values])[]): Chain {
  const ends = addStep(addStep([], 'neutral', { ...from }), 'outputTransform')
  return steps.reduce((chain, [operation, values]) => addStep(chain, operation, values), ends)
}
const exchange = ['channelMix', { rows: RED_BLUE_EXCHANGE }] as const
const turn = (angleDeg: number) => ['hueTurn', { angleDeg }] as const
const mix = (...rows: number[]) => ['channelMix', { rows }] as const
const tone = ['exposureContrast', { exposureEv: 0.8, contrast: 0.3, shoulder: 0.6 }] as const

/** 17³ points over ACEScct: colours a third of a turn on, less of them the lighter, and darkness tinted. */
function turningCube(): Table {
  const size = 17
  const data = new Float32Array(size ** 3 * 3)
  for (let i = 0; i < size ** 3; i++) {
    const rgb = [i % size, Math.floor(i / size) % size, Math.floor(i / size ** 2)].map((n) => n / (size - 1))
    const mean = (rgb[0] + rgb[1] + rgb[2]) / 3
    const tint = [0.02, 0, -0.015]
    for (let c = 0; c < 3; c++)
      data[i * 3 + c] = mean + (rgb[(c + 1) % 3] - mean) * (1.1 - 0.4 * mean) + tint[c] * (1 - mean) ** 2
  }
  return { kind: '3d', width: size, height: size, data }
}
const supplies = { [lutSupply('turning')]: turningCube() }
const table = ['colourLut', { table: 'turning', name: 'turning' }] as const
const curve = ['toneCurve', { points: [0, 0, 0.3, 0.2, 0.7, 0.82, 1, 1] }] as const
const bands = Array.from({ length: 8 }, (_, i) => {
  return { hueDeg: 20 + 45 * i, turnDeg: 25 * Math.sin(i), strengthStops: 0.4 * Math.cos(2 * i), lightEv: 0 }
})
const bent = ['hueBands', { bands: writeBands(bands) }] as const

const chains: Record<string, Chain> = {
  plain: chainOf(),
  exchanged: chainOf(exchange),
  inverted: chainOf(turn(180)),
  'exchanged and inverted': chainOf(exchange, turn(180)),
  'exchanged and turned by 40°': chainOf(exchange, turn(40)),
  'turned by 90°': chainOf(turn(90)),
  'turned by −120° with tone': chainOf(turn(-120), tone),
  'exchanged with tone': chainOf(exchange, tone),
  'tone first, then inverted': chainOf(tone, turn(180)),
  'partly exchanged': chainOf(mix(0.7, 0, 0.3, 0, 1, 0, 0.3, 0, 0.7)),
  'infrared taken out of red': chainOf(mix(1.8, 0, -0.8, 0, 1.4, -0.4, 0.1, 0, 0.9), turn(60)),
  'a mix that tints': chainOf(mix(0.95, 0.1, 0, 0, 1, 0, 0, 0.05, 0.85), exchange),
  'a colour table': chainOf(table),
  'exchanged, then a colour table': chainOf(exchange, table),
  'a colour table and a tone curve': chainOf(table, curve),
  'exchanged with a tone curve': chainOf(exchange, curve),
  'inverted with hue bands': chainOf(turn(180), bent),
}
const directions = Array.from({ length: 8 }, (_, i) => {
  const angle = (i * Math.PI) / 4
  return { warm: 40 * Math.cos(angle), magenta: 40 * Math.sin(angle) }
})

/** What the whole chain makes of the patch that is grey under `from`, with these gains, as colorjs.io reads sRGB. */
function finished(chain: Chain, gains: typeof from): Color {
  const patch = neutralOutlook(chain, plainFacts, supplies).patchOf(from)
  const region = { x: 0, y: 0, width: 1, height: 1, frameWidth: 1, frameHeight: 1 }
  const description = describeChain(withProbe(chain, gains), plainFacts, { space: 'srgb', supplies })
  const [r, g, b] = renderOnCpu(description, Float32Array.of(...patch, 0), region)
  return new Color('srgb', [r, g, b])
}

/** A shift in OKLab a/L and b/L: warm daylight has the hue 80°, magenta is square to it (computed by us from D50 … D100). */
function seenWay({ warm, magenta }: { warm: number; magenta: number }): [number, number] {
  const [warmA, warmB] = [Math.cos((80 * Math.PI) / 180), Math.sin((80 * Math.PI) / 180)]
  return [(warm * warmA + magenta * warmB) / 1000, (warm * warmB - magenta * warmA) / 1000]
}
const rowSums = (rows: readonly number[]) => [0, 3, 6].map((row) => rows[row] + rows[row + 1] + rows[row + 2])

/** OKLab a/L and b/L of a finished colour. */
function chroma(colour: Color): { light: number; a: number; b: number } {
  const [light, a, b] = colour.to('oklab').coords.map(Number)
  return { light, a: a / light, b: b / light }
}

describe.each(Object.entries(chains))('%s', (_name, chain) => {
  const outlook = neutralOutlook(chain, plainFacts, supplies)
  const before = chroma(finished(chain, from))

  it.each(directions)('warm $warm, magenta $magenta', ({ warm, magenta }) => {
    const { gains, reached } = outlook.gainsFor(from, { warm, magenta })
    expect(reached).toBe(true)
    const picture = finished(chain, gains)
    const after = chroma(picture)
    const [wayA, wayB] = seenWay({ warm, magenta })
    const wanted = new Color('oklab', [after.light, (before.a + wayA) * after.light, (before.b + wayB) * after.light])
    expect(picture.deltaE(wanted, '2000')).toBeLessThan(0.5)
    expect((after.a - before.a) * wayA + (after.b - before.b) * wayB).toBeGreaterThan(0)
    const shift = outlook.shiftOf(from, gains)
    expect(shift).toEqual({ warm: expect.closeTo(warm, 1), magenta: expect.closeTo(magenta, 1) })
  })
})

test.each([
  { name: 'plain', warm: 50, magenta: 0, stops: [0.1409, -0.4312] },
  { name: 'exchanged', warm: 50, magenta: 0, stops: [-0.4312, 0.1409] },
  { name: 'plain', warm: 0, magenta: 50, stops: [0.308, 0.1747] },
  { name: 'turned by 90°', warm: 20, magenta: 0, stops: [0.1238, 0.0685] },
])('$name, warm $warm, magenta $magenta: gains as computed separately', ({ name, warm, magenta, stops }) => {
  const { gains } = neutralOutlook(chains[name], plainFacts, {}).gainsFor(from, { warm, magenta })
  expect(gains.redStops - from.redStops).toBeCloseTo(stops[0], 3)
  expect(gains.blueStops - from.blueStops).toBeCloseTo(stops[1], 3)
})

const third = 1 / 3
test.each([
  ['black and white', chainOf(mix(third, third, third, third, third, third, third, third, third))],
  ['one channel', chainOf(mix(0, 1, 0, 0, 1, 0, 0, 1, 0))],
])('%s has no warmth: it stays where it is and says so', (_name, chain) => {
  for (const shift of directions) {
    const { gains, reached } = neutralOutlook(chain, plainFacts, supplies).gainsFor(from, shift)
    expect(reached).toBe(false)
    expect(gains).toEqual(from)
  }
})

test('a colour table takes part: the way to warm is another behind it', () => {
  const way = (name: string) =>
    neutralOutlook(chains[name], plainFacts, supplies).gainsFor(from, { warm: 30, magenta: 0 })
  const [plain, turned] = [way('plain').gains, way('a colour table').gains]
  expect(Math.hypot(plain.redStops - turned.redStops, plain.blueStops - turned.blueStops)).toBeGreaterThan(0.1)
})

describe('seeded mixes', () => {
  const random = randomNumbers(31)
  const parts = 400
  const cases = Array.from({ length: 1000 }, () => {
    const rows = Array.from({ length: 9 }, (_, i) => (i % 4 === 0 ? 0.4 : -0.3) + random())
    const shift = { warm: 160 * random() - 80, magenta: 160 * random() - 80 }
    return { rows, shift, outlook: neutralOutlook(chainOf(mix(...rows)), plainFacts, {}) }
  }).filter(({ rows }) => Math.abs(determinant(rows)) > 1e-2 && Math.min(...rowSums(rows)) > 0.05)

  /** Weakest channel before the mix as a share of the strongest, where a share of the shift is to be seen behind it. */
  function weakest({ rows, shift }: (typeof cases)[number], share: number): number {
    const [lightness, a, b] = workingToOklab(rowSums(rows))
    const [wayA, wayB] = seenWay(shift).map((way) => way * lightness * share)
    const light = transform(invert(rows), oklabToWorking([lightness, a + wayA, b + wayB]))
    return Math.min(...light) / Math.max(...light)
  }
  /** Largest share of the shift up to which all light before the mix is positive: no gains make any other. */
  const reachable = (one: (typeof cases)[number]) => {
    const beyond = Array.from({ length: parts + 1 }, (_, i) => i / parts).find((share) => weakest(one, share) <= 0)
    return beyond === undefined ? 1 : Math.max(beyond - 1 / parts, 0)
  }
  const stopped = cases.filter((one) => reachable(one) < 1)
  const open = cases.filter((one) => Array.from({ length: 21 }, (_, i) => i / 20).every((s) => weakest(one, s) > 0.05))

  test('hold enough of both', () => {
    expect(stopped.length).toBeGreaterThan(50)
    expect(open.length).toBeGreaterThan(50)
  })

  test.each(stopped)('%#: stops at the last share that gains can reach, on the way, and says so', (one) => {
    const { outlook, shift } = one
    const { gains, reached } = outlook.gainsFor(from, shift)
    expect(reached).toBe(false)
    const { warm, magenta } = outlook.shiftOf(from, gains)
    const asked = Math.hypot(shift.warm, shift.magenta)
    expect(Math.abs(warm * shift.magenta - magenta * shift.warm) / asked).toBeLessThan(1)
    // The last steps would cost any gain, so it may stop a little before.
    const share = (warm * shift.warm + magenta * shift.magenta) / asked ** 2
    expect(share).toBeGreaterThan(reachable(one) - 0.05)
    expect(share).toBeLessThan(reachable(one) + 0.01)
  })

  test.each(open)('%#: what gains can reach is reached', ({ outlook, shift }) => {
    const { gains, reached } = outlook.gainsFor(from, shift)
    expect(reached).toBe(true)
    const seen = outlook.shiftOf(from, gains)
    expect(seen).toEqual({ warm: expect.closeTo(shift.warm, 0), magenta: expect.closeTo(shift.magenta, 0) })
  })
})

test('a mix that nearly loses a colour stops on the way it was asked to go', () => {
  const outlook = neutralOutlook(chainOf(mix(0.52, 0, 0.48, 0, 1, 0, 0.48, 0, 0.52)), plainFacts, {})
  const { gains, reached } = outlook.gainsFor(from, { warm: 90, magenta: 0 })
  expect(reached).toBe(false)
  const { warm, magenta } = outlook.shiftOf(from, gains)
  expect(warm).toBeGreaterThan(5)
  expect(warm).toBeLessThan(90)
  expect(Math.abs(magenta)).toBeLessThan(1)
})

test('the patch of a neutral is grey under it, as bright as the frame in the mean', () => {
  const outlook = neutralOutlook(chains.plain, plainFacts, {})
  const [r, g, b] = outlook.paint(outlook.patchOf(from), from)
  expect([g, b]).toEqual([expect.closeTo(r, 6), expect.closeTo(r, 6)])
  const opening = { redStops: -plainFacts.referenceNeutral[0], blueStops: -plainFacts.referenceNeutral[1] }
  const [opened] = outlook.paint(outlook.patchOf(opening), opening)
  expect(r).toBeCloseTo(opened, 5)
})

test('a second light leaves the outlook of the main one alone, wherever its shade lies', () => {
  const chain = addStep(chains.exchanged, 'secondLight', { redStops: 0.5, blueStops: -0.4 })
  const shade = { kind: 'plane', width: 1, height: 1, data: Float32Array.of(1) } as const
  const stepId = chain.find(({ operation }) => operation === 'secondLight')!.id
  const outlook = neutralOutlook(chain, plainFacts, { [`${stepId} shade`]: shade })
  const alone = neutralOutlook(chains.exchanged, plainFacts, {})
  const shift = { warm: 25, magenta: -10 }
  expect(outlook.gainsFor(from, shift)).toEqual(alone.gainsFor(from, shift))
})
