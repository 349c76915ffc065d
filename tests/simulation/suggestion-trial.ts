// Suggestions tried on drawn scenes. Constants were chosen on geometries 0–259; what is reported comes from others, drawn when
// the method stood and not looked at before. Scenes of one geometry under two sensors are not independent.
import type { CellGrid } from '../../src/frame/cell-grid.ts'
import type { NoiseModel } from '../../src/frame/frame.ts'
import { automaticNeutral } from '../../src/analysis/candidates/automatic-neutral.ts'
import { suggestNeutrals } from '../../src/analysis/candidates/suggest-neutrals.ts'
import type { RememberedGrey, Suggestion } from '../../src/analysis/candidates/suggestion.ts'
import { type FilterNm, filters, recording, type SensorName } from './camera.ts'
import { drawGeometry, type LightKind, photograph } from './scene.ts'

export const firstFreshSeed = 20_000

/** A scene counts as soluble where a material lies this near to flat grey, and as solved where a suggestion does (stops). */
const soluble = 0.045
const solved = 0.05
/** Soluble scenes of every filter that are reported on. */
export const leastSoluble = 200

export interface Trial {
  readonly filterNm: FilterNm
  readonly kind: LightKind
  readonly soluble: boolean
  /** Distance in stops from flat grey in a light of the frame: each suggestion in order, and the two averages. */
  readonly errors: readonly number[]
  readonly greyWorld: number
  readonly shadesOfGrey: number
  /** Error of the first where a grey of an earlier scene is remembered; null where none is yet, absent where it was not asked for. */
  readonly firstRemembering?: number | null
  readonly foliage: number
  readonly offersFoliage: boolean
  readonly colourLeft: boolean
}

interface Camera {
  readonly sensor: SensorName
  readonly filterNm: FilterNm
}

const camerasBehind = (among: readonly FilterNm[]): Camera[] =>
  (['A', 'B'] as const).flatMap((sensor) => among.map((filterNm) => ({ sensor, filterNm })))

type Ratios = Pick<Suggestion, 'u' | 'v'>

/** Greys that somebody who sees which suggestion is right takes along from scene to scene, camera by camera. */
class Memory {
  private readonly greys = new Map<string, RememberedGrey>()

  private static nameOf = ({ sensor, filterNm }: Camera) => `${sensor} ${filterNm}`

  /** Error of the first suggestion with what is remembered so far. */
  tryFirst(camera: Camera, grid: CellGrid, noise: NoiseModel, error: (ratios: Ratios) => number): number | null {
    const remembered = this.greys.get(Memory.nameOf(camera))
    if (!remembered) return null
    const [first] = suggestNeutrals(grid, noise, { filterNm: camera.filterNm, remembered }).neutrals
    return first ? error(first) : null
  }

  /** Keeps the best of the suggestions where it is right. */
  keep(camera: Camera, neutrals: readonly Ratios[], error: (ratios: Ratios) => number): void {
    const [best] = neutrals.toSorted((a, b) => error(a) - error(b))
    if (best && error(best) <= solved) this.greys.set(Memory.nameOf(camera), [best.u, best.v])
  }
}

/** One geometry before some cameras. */
function* tryGeometry(seed: number, cameras: readonly Camera[], takes: (camera: Camera) => boolean, memory?: Memory) {
  const geometry = drawGeometry(seed)
  for (const [n, camera] of cameras.entries()) {
    if (!takes(camera)) continue
    const { filterNm, sensor } = camera
    const scene = photograph(geometry, recording(sensor, filterNm), seed * 100 + n)
    const { grid, noise, greys } = scene
    const error = ({ u, v }: Ratios) => Math.min(...greys.map((grey) => Math.hypot(u - grey[0], v - grey[1])))
    const found = suggestNeutrals(grid, noise, { filterNm })
    const average = (kind: 'grey world' | 'shades of grey') => {
      const [u, v] = automaticNeutral(grid, kind) ?? [0, 0]
      return error({ u, v })
    }
    const isSoluble = scene.nearestMaterial < soluble
    const trial: Trial = {
      filterNm,
      kind: geometry.kind,
      soluble: isSoluble,
      errors: found.neutrals.map(error),
      greyWorld: average('grey world'),
      shadesOfGrey: average('shades of grey'),
      foliage: geometry.foliage,
      offersFoliage: found.foliage !== null,
      colourLeft: found.colourLeft,
    }
    if (!memory || !isSoluble) yield trial
    else {
      yield { ...trial, firstRemembering: memory.tryFirst(camera, grid, noise, error) }
      memory.keep(camera, found.neutrals, error)
    }
  }
}

/** Tries these filters on every geometry and both sensors; geometries come one by one, because they are large. */
export function* tryScenes(first: number, count: number, among: readonly FilterNm[] = filters): Generator<Trial> {
  for (let seed = first; seed < first + count; seed++) yield* tryGeometry(seed, camerasBehind(among), () => true)
}

/** Tries geometries under both sensors until every filter has its least number of soluble scenes, and each no longer than that. */
export function* tryUntilSoluble(first: number, remembering = false): Generator<Trial> {
  const wanting = new Map<FilterNm, number>(filters.map((filterNm) => [filterNm, leastSoluble]))
  const memory = remembering ? new Memory() : undefined
  for (let seed = first; wanting.size > 0; seed++) {
    for (const trial of tryGeometry(seed, camerasBehind(filters), ({ filterNm }) => wanting.has(filterNm), memory)) {
      if (trial.soluble) wanting.set(trial.filterNm, wanting.get(trial.filterNm)! - 1)
      yield trial
    }
    for (const [filterNm, left] of wanting) if (left <= 0) wanting.delete(filterNm)
  }
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value / values.length, 0)

/** Rates and mean errors over soluble scenes; where nothing was suggested grey world stands in, as it would on screen. */
export function summarise(trials: readonly Trial[]) {
  const counted = trials.filter(({ soluble }) => soluble)
  const errors = counted.map(({ errors, greyWorld }) => (errors.length ? errors : [greyWorld]))
  const share = (tops: number) => mean(errors.map((list) => Number(Math.min(...list.slice(0, tops)) <= solved)))
  return {
    scenes: trials.length,
    soluble: counted.length,
    top1: share(1),
    top3: share(3),
    first: mean(errors.map(([first]) => first)),
    greyWorld: mean(counted.map(({ greyWorld }) => greyWorld)),
    greyWorldSolves: mean(counted.map(({ greyWorld }) => Number(greyWorld <= solved))),
    shadesOfGrey: mean(counted.map(({ shadesOfGrey }) => shadesOfGrey)),
  }
}

/** Mean error of the first, with a remembered grey and without one, over the scenes in which one is remembered. */
export function summariseMemory(trials: readonly Trial[]) {
  const pairs = trials.flatMap(({ errors, firstRemembering }) =>
    typeof firstRemembering === 'number' ? [{ with: firstRemembering, without: errors[0] }] : [],
  )
  return {
    scenes: pairs.length,
    with: mean(pairs.map((pair) => pair.with)),
    without: mean(pairs.map((pair) => pair.without)),
    solvedWith: mean(pairs.map((pair) => Number(pair.with <= solved))),
    solvedWithout: mean(pairs.map((pair) => Number(pair.without <= solved))),
  }
}
