// How far each cell lies in shade, by what the frame's materials look like in sun. A material in any light between both lies on
// one curve of colour and level, so a cell that no light is known of lies on the curves of few materials that the frame is seen
// to hold; the light that they agree on is taken. Without this, a penumbra cannot be told from a darker material.
import { boxSums } from '../box-sums.ts'
import { addTo, colourIn, columns, levelIn, readFrom, rows } from './colour-level-bins.ts'
import { colourOfLevel } from './colour-of-level.ts'
import { lightDistance, type LightMark } from './light-marks.ts'

/** How strongly cells of doubtful light are kept from telling what materials look like (tuned by simulation, as all constants here). */
const doubtPower = 4
/** How often the density of colours is smoothed over its neighbours. */
const smoothings = 2
/** Shares of sun that are tried, and what part of a frame is expected to lie between the lights. */
const sunShares = [0, 0.012, 0.025, 0.04, 0.06, 0.085, 0.12, 0.165, 0.22, 0.29, 0.38, 0.49, 0.62, 0.8, 1]
const between = 0.4
/** Part of the frame in a bin below which the first estimate speaks instead. */
const emptyShare = 1.5e-6

/** Row by row; level counts from the sun mark, colour from there along the step between the lights, both in stops. */
export interface LitCells {
  readonly level: Float32Array
  readonly along: Float32Array
  /** First estimate of the shade, 0…1. */
  readonly first: Float32Array
}

/** Part of the frame in each bin, had all of it been in sun. */
function densityInSun({ level, along, first }: LitCells, distance: number, levelStep: number): Float32Array {
  const counts = new Float32Array(columns * rows)
  let counted = 0
  for (let i = 0; i < along.length; i++) {
    counted += addTo(counts, along[i], level[i], (1 - first[i]) ** doubtPower)
    counted += addTo(counts, along[i] - distance, level[i] - levelStep, first[i] ** doubtPower)
  }
  let density: Float32Array = counts
  for (let n = 0; n < smoothings; n++) density = boxSums(density, columns, rows, 1)
  const scale = 1 / (Math.max(counted, 1) * 9 ** smoothings)
  return density.map((sum) => sum * scale)
}

/** How many cells lie in each bin. */
function countedCells({ level, along }: LitCells): Float32Array {
  const bins = new Float32Array(columns * rows)
  for (let i = 0; i < along.length; i++) addTo(bins, along[i], level[i], 1)
  return bins
}

/** Weight of every tried share of sun before anything is seen: the ends hold whole areas, what is between a strip. */
const expected = sunShares.map((share, k) => {
  const width = ((sunShares[k + 1] ?? share) - (sunShares[k - 1] ?? share)) / 2
  return between * width + (k === 0 || k === sunShares.length - 1 ? (1 - between) / 2 : 0)
})

/** The way with half of the weight to either side; `ways` fall from shade (1) to sun (0). */
function medianWay(weights: readonly number[], ways: readonly number[], total: number): number {
  const last = ways.length - 1
  let [k, seen] = [last, 0]
  while (k > 0 && seen + weights[k] < total / 2) seen += weights[k--]
  if (k === last || k === 0) return ways[k]
  const [from, to] = [(ways[k] + ways[k + 1]) / 2, (ways[k] + ways[k - 1]) / 2]
  return from + ((total / 2 - seen) / weights[k]) * (to - from)
}

/** What a first estimate comes to. */
export interface MaterialsFound {
  /** How much of the frame is expected where its cells lie, in the mean of log2: the higher, the fewer materials explain it. */
  readonly agreement: number
  /** Way of each cell's colour from sun (0) to shade (1). */
  ways(): Float32Array
}

export function findMaterials(cells: LitCells, sun: LightMark, shade: LightMark): MaterialsFound {
  const { level, along, first } = cells
  const [distance, levelStep] = [lightDistance(sun, shade), shade[2] - sun[2]]
  const inSun = densityInSun(cells, distance, levelStep)
  const shadeLevel = 2 ** levelStep
  const levelWays = sunShares.map((share) => Math.log2(share + (1 - share) * shadeLevel) / levelStep)
  const ways = levelWays.map(colourOfLevel(sun, shade))
  const counts = countedCells(cells)
  // Cells are read between the middles of bins, so those beside them count too.
  const occupied = boxSums(counts, columns, rows, 1)
  const evidence = new Float32Array(columns * rows)
  const weightedWay = new Float32Array(columns * rows)
  for (let i = 0; i < evidence.length; i++) {
    if (occupied[i] === 0) continue
    const [colour, height] = [colourIn(i % columns), levelIn(Math.floor(i / columns))]
    const weights = ways.map(
      (way, k) => expected[k] * readFrom(inSun, colour - way * distance, height - levelWays[k] * levelStep),
    )
    evidence[i] = weights.reduce((sum, weight) => sum + weight, 0)
    if (evidence[i] > 0) weightedWay[i] = evidence[i] * medianWay(weights, ways, evidence[i])
  }
  const counted = counts.reduce((sum, count) => sum + count, 0)
  const agreed = counts.reduce((sum, count, i) => (count ? sum + count * Math.log2(evidence[i] + emptyShare) : sum), 0)
  return {
    agreement: agreed / Math.max(counted, 1),
    ways: () =>
      first.map((before, i) => {
        const known = readFrom(evidence, along[i], level[i])
        return (readFrom(weightedWay, along[i], level[i]) + emptyShare * before) / (known + emptyShare)
      }),
  }
}
