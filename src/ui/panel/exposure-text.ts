// Exposure data in the trade's notation.

/** Times shorter than this are written as a fraction: 0.3 s is the usual border (common practice, no source). */
const fractionBelowS = 0.3

/** e.g. 0.004 → "1/250 s", 2.5 → "2.5 s". */
export function exposureTimeText(seconds: number): string {
  return seconds < fractionBelowS ? `1/${Math.round(1 / seconds)} s` : `${Number(seconds.toFixed(1))} s`
}

/** e.g. 8 → "f/8", 5.6 → "f/5.6". */
export function apertureText(apertureF: number): string {
  return `f/${Number(apertureF.toFixed(1))}`
}

/** `YYYY:MM:DD HH:MM:SS` → "2024-05-07 14:03"; other text unchanged. */
export function takenAtText(written: string): string {
  return written.replace(/^(\d{4}):(\d\d):(\d\d) (\d\d:\d\d).*$/, '$1-$2-$3 $4')
}
