// Foliage and sky against spectra: what sensors A and B record of measured reflectances behind 590 nm in sun, against spectrally
// flat grey in the same light (`checks/triplets.csv`, computed from open spectra named beside them).
import { expect, test } from 'vitest'
import { maskKindById, type MaskPart, makePart } from '../../../src/operations/masks/mask.ts'
import { plainFacts } from '../../support/apply-operation.ts'
import { openCsv } from '../../support/open-data.ts'

const triplets = openCsv('checks/triplets.csv')
const greenFoliage = ['grass_green_b', 'leaf_deciduous_b', 'leaf_deciduous_c', 'conifer_b', 'conifer_c']
/** Fresh galvanised metal is not among them: it is .18 to .28 stop redder than grey and reads as sky. */
const others = ['concrete_road', 'asphalt_old', 'limestone', 'brick_red_a', 'brick_red_b', 'brick_grey']

function weightOf({ kind: id, values }: MaskPart, materialStops: number): number {
  const kind = maskKindById(id)
  return kind.weight(new Float64Array(6), materialStops, kind.derive(values as never, plainFacts))
}

test.skipIf(!triplets).each(['camA', 'camB'])(
  '%s behind 590 nm: every green foliage is foliage, nothing built is either (skipped without open data)',
  (camera) => {
    const rows = triplets!.filter(
      (row) => row.camera === camera && row.filter === '590' && row.illuminant === 'sun_sky_global_AM15',
    )
    const stops = (material: string) => {
      const row = rows.find((candidate) => candidate.material === material)!
      return Number(row.log2_RG) - Number(row.log2_BG)
    }
    const grey = stops('grey_card_ideal')
    const skylight = triplets!.find(
      (row) =>
        row.camera === camera &&
        row.filter === '590' &&
        row.illuminant === 'sky_diffuse_clear' &&
        row.material === 'grey_card_ideal',
    )!
    const clearSky = Number(skylight.log2_RG) - Number(skylight.log2_BG) - grey
    const table = [...greenFoliage, ...others].map((material) => {
      const against = stops(material) - grey
      return {
        material,
        against,
        foliage: weightOf(makePart('foliage'), against),
        sky: weightOf(makePart('sky'), against),
      }
    })
    for (const { material, against, foliage, sky } of table)
      console.log(
        `${camera} ${material.padEnd(18)} ${against.toFixed(2)} foliage ${foliage.toFixed(2)} sky ${sky.toFixed(2)}`,
      )
    const isRight = ({ material, foliage, sky }: (typeof table)[0]) =>
      sky <= 0.01 && (greenFoliage.includes(material) ? foliage >= 0.95 : foliage <= 0.01)
    expect(table.filter((row) => !isRight(row))).toEqual([])
    console.log(`${camera} clear sky ${clearSky.toFixed(2)} sky ${weightOf(makePart('sky'), clearSky).toFixed(2)}`)
    expect(weightOf(makePart('sky'), clearSky)).toBeGreaterThanOrEqual(0.97)
  },
)
