// Which maps stand where on the shelf: those made for the frame's filter first, then one's own, then the rest.
import type { ColourMap } from '../../edits/colour-map.ts'

export interface ShelfGroup {
  readonly title: string
  readonly maps: readonly ColourMap[]
  /** Its maps were made for different filters. */
  readonly isMixed: boolean
}

export function filterText(filterNm: ColourMap['filterNm']): string {
  if (filterNm === undefined) return 'any filter'
  return filterNm === null ? 'full spectrum' : `${filterNm} nm`
}

/** Of the filters that maps were made for, the one nearest to the frame's; undefined where the frame's is not known. */
function nearestFilter(maps: readonly ColourMap[], filterNm: ColourMap['filterNm']): ColourMap['filterNm'] {
  if (typeof filterNm !== 'number') return filterNm
  const known = maps.map((map) => map.filterNm).filter((nm) => typeof nm === 'number')
  return known.toSorted((a, b) => Math.abs(a - filterNm) - Math.abs(b - filterNm))[0]
}

/** Groups in the order of the shelf; empty ones are left out, except for one's own. */
export function shelfGroups(
  shipped: readonly ColourMap[],
  own: readonly ColourMap[],
  filterNm: ColourMap['filterNm'],
): readonly ShelfGroup[] {
  const nearest = nearestFilter(shipped, filterNm)
  const isNear = (map: ColourMap) => map.filterNm !== undefined && map.filterNm === nearest
  const groups = [
    { title: `Made for ${filterText(nearest)}`, maps: shipped.filter(isNear), isMixed: false },
    { title: 'Your own', maps: own, isMixed: true },
    { title: 'For any filter', maps: shipped.filter((map) => map.filterNm === undefined), isMixed: false },
    {
      title: 'Made for other filters',
      maps: shipped.filter((map) => map.filterNm !== undefined && !isNear(map)),
      isMixed: true,
    },
  ]
  return groups.filter(({ maps }) => maps === own || maps.length > 0)
}
