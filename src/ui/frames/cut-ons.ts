// Cut-on wavelengths of filters as the screen offers and names them.

/** Cut-ons of common long-pass filters in nm (common practice, no source). */
export const commonCutOnsNm: readonly number[] = [550, 590, 630, 665, 695, 720, 780, 850]

/** Limits of a typed cut-on in nm: below, a filter is clear; above, silicon no longer sees (our choice). */
export const shortestCutOnNm = 380
export const longestCutOnNm = 1100

/** A stated filter in a few words; undefined means that nothing was stated. */
export function filterWords(filterNm: number | null | undefined): string {
  if (filterNm === undefined) return 'filter not stated'
  return filterNm === null ? 'no filter, full spectrum' : `filter ${filterNm} nm`
}
