// Suggestions tried on drawn scenes. Constants were chosen on geometries 0–259; what is reported comes from others, drawn
// afterwards and never looked at one by one. Scenes of one geometry under two sensors are not independent.
import { automaticNeutral } from '../../src/analysis/candidates/automatic-neutral.ts'
import { suggestNeutrals } from '../../src/analysis/candidates/suggest-neutrals.ts'
import { type FilterNm, filters, recording, type Record3 } from './camera.ts'
import { drawGeometry, type LightKind, photograph } from './scene.ts'

export const firstFreshSeed = 2000
export const freshGeometries = 110

/** A scene counts as soluble where a material lies this near to flat grey, and as solved where a suggestion does (stops). */
const soluble = 0.045
const solved = 0.05

export interface Trial {
  readonly filterNm: FilterNm
  readonly kind: LightKind
  readonly soluble: boolean
  /** Distance in stops from flat grey in a light of the frame: each suggestion in order, and the two averages. */
  readonly errors: readonly number[]
  readonly greyWorld: number
  readonly shadesOfGrey: number
  readonly foliage: number
  readonly offersFoliage: boolean
  readonly colourLeft: boolean
}

/** Tries these filters on every geometry and both sensors; geometries come one by one, because they are large. */
export function* tryScenes(first: number, count: number, among: readonly FilterNm[] = filters): Generator<Trial> {
  const cameras = (['A', 'B'] as const).flatMap((sensor) =>
    among.map((filterNm) => [filterNm, recording(sensor, filterNm)] as [FilterNm, Record3]),
  )
  for (let seed = first; seed < first + count; seed++) {
    const geometry = drawGeometry(seed)
    for (const [n, [filterNm, record]] of cameras.entries()) {
      const { grid, noise, greys, nearestMaterial, foliage } = photograph(geometry, record, seed * 100 + n)
      const error = ([u, v]: readonly [number, number]) =>
        Math.min(...greys.map((grey) => Math.hypot(u - grey[0], v - grey[1])))
      const found = suggestNeutrals(grid, noise, { filterNm })
      const average = (kind: 'grey world' | 'shades of grey') => error(automaticNeutral(grid, kind) ?? [0, 0])
      yield {
        filterNm,
        kind: geometry.kind,
        soluble: nearestMaterial < soluble,
        errors: found.neutrals.map(({ u, v }) => error([u, v])),
        greyWorld: average('grey world'),
        shadesOfGrey: average('shades of grey'),
        foliage,
        offersFoliage: found.foliage !== null,
        colourLeft: found.colourLeft,
      }
    }
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
