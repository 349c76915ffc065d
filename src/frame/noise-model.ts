// The noise model of a frame from its own pixels (photon transfer): in flat places the variance of a normalised value y
// is y / fullScale + (readNoise / fullScale)². Texture only ever adds variance, so the quietest blocks of each level count.
import type { NoiseModel, SensorData } from './frame.ts'
import { photositeTable } from './photosite-table.ts'

/** Samples of one colour along a block's side, and blocks looked at over the frame (our choice). */
const side = 12
const blocksWanted = 6000
/** The quantile of block variances that stands for flat blocks, and its value for pure noise, computed by us for 12×12 second differences. */
const quietShare = 0.1
const quietOfPureNoise = 0.801
/** Levels are grouped in half stops down to 2^−12; a group needs this many blocks (our choice). */
const groupsPerStop = 2
const darkestStop = -12
const leastBlocks = 24
/** Groups needed to tell photon noise from read noise (our choice). */
const leastGroups = 4
/** Frames above this level are not judged: saturation quenches noise (our choice). */
const brightest = 0.9
/** When the frame cannot tell: 50,000 electrons at ISO 100 and 3 electrons of read noise, a common large sensor (from memory). */
const electronsAtIso100 = 50_000
const usualReadNoise = 3
const usualIso = 400
/** No sensor lies outside (from memory). */
const electronsRange = [100, 1_000_000] as const
const leastReadNoise = 1

interface Group {
  levelSum: number
  readonly variances: number[]
}
interface Point {
  readonly level: number
  readonly variance: number
  readonly blocks: number
}

/** The noise model of a camera at an ISO speed when the frame itself cannot tell. */
export function usualNoise(iso = usualIso): NoiseModel {
  return { fullScaleElectrons: (electronsAtIso100 * 100) / iso, readNoiseElectrons: usualReadNoise }
}

/** One way of walking over samples of one colour: index of sample (0, 0), steps, and how codes become normalised. */
interface Plane {
  readonly start: number
  readonly right: number
  readonly down: number
  readonly columns: number
  readonly rows: number
  readonly black: number
  readonly scale: number
}

function planesOf(sensor: SensorData): Plane[] {
  const { width, height } = sensor
  if (sensor.kind === 'linear') {
    return sensor.black.map((black, start) => {
      return {
        start,
        right: 3,
        down: width * 3,
        columns: width,
        rows: height,
        black,
        scale: 1 / (sensor.white - black),
      }
    })
  }
  const table = photositeTable(sensor)
  return table.colours.map((_, entry) => ({
    start: Math.floor(entry / table.columns) * width + (entry % table.columns),
    right: table.columns,
    down: width * table.rows,
    columns: Math.floor(width / table.columns),
    rows: Math.floor(height / table.rows),
    black: table.black[entry],
    scale: table.scale[entry],
  }))
}

/** Adds the blocks of one plane to the groups; blocks with a sample at 0 or near saturation are left out. */
function addBlocks(codes: Uint16Array, plane: Plane, blocks: number, groups: Group[]) {
  const { black, scale, right, down } = plane
  const spots = (plane.columns * plane.rows) / blocks
  const pitch = Math.max(side + 2, Math.floor(Math.sqrt(spots)))
  const ceiling = brightest / scale + black
  for (let top = 0; top + side <= plane.rows; top += pitch) {
    for (let left = 1; left + side < plane.columns; left += pitch) {
      let sum = 0
      let squares = 0
      let least = Infinity
      let most = 0
      for (let row = top; row < top + side; row++) {
        for (let i = plane.start + row * down + left * right, n = 0; n < side; n++, i += right) {
          const code = codes[i]
          const bend = codes[i - right] - 2 * code + codes[i + right]
          sum += code
          squares += bend * bend
          if (code < least) least = code
          if (code > most) most = code
        }
      }
      if (least === 0 || most > ceiling) continue
      const level = (sum / (side * side) - black) * scale
      const stop = Math.max(Math.log2(Math.max(level, 2 ** darkestStop)), darkestStop)
      const group = (groups[Math.floor((stop - darkestStop) * groupsPerStop)] ??= { levelSum: 0, variances: [] })
      group.levelSum += level
      group.variances.push((squares / (6 * side * side)) * scale * scale)
    }
  }
}

/** The quiet blocks of each level. */
function quietPoints(groups: Group[]): Point[] {
  return groups.flatMap(({ levelSum, variances }) => {
    const blocks = variances.length
    if (blocks < leastBlocks) return []
    variances.sort((a, b) => a - b)
    return { level: levelSum / blocks, variance: variances[Math.floor(quietShare * blocks)] / quietOfPureNoise, blocks }
  })
}

/** Line through the lower edge of the points: variance = slope · level + offset, offset ≥ 0. Levels that texture lifts lose their say. */
function fitLowerLine(points: readonly Point[]): { slope: number; offset: number } {
  let slope = 0
  let offset = 0
  for (let round = 0; round < 12; round++) {
    let n = 0
    let x = 0
    let y = 0
    let xx = 0
    let xy = 0
    for (const { level, variance, blocks } of points) {
      const above = round ? Math.max(0, variance / (slope * level + offset) - 1) : 0
      const weight = blocks / (variance * variance) / (1 + (above / 0.2) ** 2)
      n += weight
      x += weight * level
      y += weight * variance
      xx += weight * level * level
      xy += weight * level * variance
    }
    slope = (n * xy - x * y) / (n * xx - x * x)
    offset = (y - slope * x) / n
    if (offset < 0) {
      offset = 0
      slope = xy / xx
    }
  }
  return { slope, offset }
}

/**
 * Estimates the noise model of upright sensor data; `iso` serves where the frame has too few levels or no flat places.
 * Texture everywhere makes it err towards more noise.
 */
export function estimateNoise(sensor: SensorData, iso?: number): NoiseModel {
  const planes = planesOf(sensor)
  const groups: Group[] = []
  for (const plane of planes) addBlocks(sensor.codes, plane, blocksWanted / planes.length, groups)
  const points = quietPoints(groups.filter(Boolean))
  const { slope, offset } = points.length < leastGroups ? { slope: NaN, offset: 0 } : fitLowerLine(points)
  const fullScaleElectrons = 1 / slope
  if (!(fullScaleElectrons > electronsRange[0] && fullScaleElectrons < electronsRange[1])) return usualNoise(iso)
  const ofQuantising = planes[0].scale / Math.sqrt(12)
  const readNoise = Math.max(Math.sqrt(offset), ofQuantising) * fullScaleElectrons
  return { fullScaleElectrons, readNoiseElectrons: Math.max(readNoise, leastReadNoise) }
}
