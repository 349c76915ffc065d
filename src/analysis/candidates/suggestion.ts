// What is offered as a neutral: plain data, so that it can come from a worker and be kept with a frame.

/** Distance in stops of (u, v) within which two neutrals are practically one: the better speaks for both (our choice). */
export const sameColourStops = 0.06

export interface Suggestion {
  /** A place of this colour, x and y 0…1 of the upright frame: where a picker would stand. */
  readonly place: readonly [x: number, y: number]
  /** Colour of the place: log2 R/G and log2 B/G. */
  readonly u: number
  readonly v: number
  /** Gains in stops relative to green that make it grey. */
  readonly redStops: number
  readonly blueStops: number
  /** Higher is more likely to be truly neutral; comparable within one frame only. */
  readonly score: number
  /** Share of the frame's usable cells that have this colour, 0…1. */
  readonly area: number
  /** What speaks for it, for people, without a full stop: “bright, between foliage and sky, even”. */
  readonly reason: string
}

/** A grey remembered from other frames of the same camera and filter, as (log2 R/G, log2 B/G). */
export type RememberedGrey = readonly [u: number, v: number]

export interface Suggestions {
  /** Likely neutrals, best first; empty where no cell is usable. */
  readonly neutrals: readonly Suggestion[]
  /** Foliage as another offer (white foliage), or null where nothing is clearly that. */
  readonly foliage: Suggestion | null
  /** Whether the frame still holds colour that a neutral could set. */
  readonly colourLeft: boolean
}
