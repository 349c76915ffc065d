// What a new place begins with behind the filter at hand: the longer the cut-on, the nearer foliage and sky lie to grey.
import type { FrameFacts } from '../../frame/frame.ts'
import type { Values } from '../values.ts'
import { initialValues } from '../values.ts'
import { maskKindById } from './mask.ts'

/**
 * Distance of foliage from concrete by cut-on, against that behind 590 nm: means of sensors A and B, .765, .75, .61, .37, .18,
 * .09 and .005 stop (computed from open spectra).
 */
const reachByCutOn: readonly (readonly [nm: number, share: number])[] = [
  [590, 1],
  [630, 0.81],
  [665, 0.49],
  [695, 0.24],
  [720, 0.12],
  [780, 0.007],
]
/** Below this share colour tells no materials apart (our choice): three standard deviations of the plane's noise. */
const leastShare = 0.05

/** How far materials lie apart behind a filter, 1 at 590 nm and below, and where it is not known. */
function materialShare(filterNm: FrameFacts['filterNm']): number {
  if (filterNm === undefined || filterNm === null || filterNm <= reachByCutOn[0][0]) return 1
  const after = reachByCutOn.findIndex(([nm]) => nm >= filterNm)
  if (after < 0) return 0
  const [[fromNm, from], [toNm, to]] = [reachByCutOn[after - 1], reachByCutOn[after]]
  return from + ((filterNm - fromNm) / (toNm - fromNm)) * (to - from)
}

/** Whether colour behind this filter tells foliage, stone and sky apart. */
export function tellsMaterials(filterNm: FrameFacts['filterNm']): boolean {
  return materialShare(filterNm) >= leastShare
}

/** Values of a new part of a kind, for a frame behind a filter. */
export function startValues(kindId: string, filterNm: FrameFacts['filterNm']): Values {
  const kind = maskKindById(kindId)
  const values: Values = initialValues(kind)
  if (!kind.readsMaterial) return values
  const share = Math.max(materialShare(filterNm), leastShare)
  const scaled = (name: string, least: number) =>
    Math.max(Math.round(Math.abs(Number(values[name])) * share * 100) / 100, least)
  const side = Math.sign(Number(values.borderStops))
  return { ...values, borderStops: side * scaled('borderStops', 0.01), softness: scaled('softness', 0.01) }
}
