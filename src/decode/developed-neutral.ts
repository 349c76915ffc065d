// The neutral a developed file opens with: its own, where a person or the camera had balanced it, else the frame’s as with a raw file.

/**
 * Distance in stops from grey in the mean within which a file counts as balanced (our choice): a camera’s automatic leaves red files
 * 1.5 to 4 stops off behind a filter, and a scene that is half foliage lies this far from grey by itself.
 */
const balancedWithinStops = 0.5

/** `found` is the neutral of the frame as (log2 R/G, log2 B/G); (0, 0) leaves a picture as it was developed. */
export function developedNeutral(found: readonly [number, number], isFinishedHere: boolean): readonly [number, number] {
  return isFinishedHere || Math.hypot(...found) <= balancedWithinStops ? [0, 0] : found
}
