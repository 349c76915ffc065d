// Where gains lie on the pad: pure geometry between gains in stops (red to green across, blue to green up) and CSS pixels.
import type { NeutralGains } from '../../edits/marks.ts'

/** What the pad shows: the gains in its middle and the stops one CSS pixel spans, alike in both directions. */
export interface PlaneView {
  readonly centre: NeutralGains
  readonly stopsPerPx: number
}
export interface PadSize {
  readonly width: number
  readonly height: number
}

/** Finest and coarsest scale in stops per CSS pixel: a hundredth stop or a thousand stops across the pad (our choice). */
const finest = 0.01 / 256
const coarsest = 1000 / 256
/** Smallest span across the pad that fitting gives, in stops, and the free margin around what is fitted in CSS pixels (our choice). */
const smallestFitStops = 1
const fitMarginPx = 28
/** Smallest distance between lines of the grid in CSS pixels, so that their numbers stay apart (our choice). */
const closestLinesPx = 44

export function pointOf(
  { centre, stopsPerPx }: PlaneView,
  size: PadSize,
  gains: NeutralGains,
): { x: number; y: number } {
  return {
    x: size.width / 2 + (gains.redStops - centre.redStops) / stopsPerPx,
    y: size.height / 2 - (gains.blueStops - centre.blueStops) / stopsPerPx,
  }
}

export function gainsAt({ centre, stopsPerPx }: PlaneView, size: PadSize, x: number, y: number): NeutralGains {
  return {
    redStops: centre.redStops + (x - size.width / 2) * stopsPerPx,
    blueStops: centre.blueStops - (y - size.height / 2) * stopsPerPx,
  }
}

/** Gains are kept to this part of a stop: finer than anyone sees, and short to read in a file. */
const grainStops = 1e-4

/** Gains as a hand on the pad sets them. */
export function toGrain({ redStops, blueStops }: NeutralGains): NeutralGains {
  const rounded = (stops: number) => Number((Math.round(stops / grainStops) * grainStops).toFixed(4))
  return { redStops: rounded(redStops), blueStops: rounded(blueStops) }
}

/** The view that shows all of these gains with a margin. */
export function fittedView(all: readonly NeutralGains[], size: PadSize): PlaneView {
  const range = (of: (gains: NeutralGains) => number) => {
    const values = all.map(of)
    const [low, high] = all.length > 0 ? [Math.min(...values), Math.max(...values)] : [0, 0]
    return { middle: (low + high) / 2, span: high - low }
  }
  const red = range(({ redStops }) => redStops)
  const blue = range(({ blueStops }) => blueStops)
  const room = (px: number) => Math.max(px - 2 * fitMarginPx, 1)
  const stopsPerPx = Math.max(
    red.span / room(size.width),
    blue.span / room(size.height),
    smallestFitStops / Math.max(size.width, 1),
  )
  return { centre: { redStops: red.middle, blueStops: blue.middle }, stopsPerPx: Math.min(stopsPerPx, coarsest) }
}

/** The view moved by CSS pixels. */
export function pannedView(view: PlaneView, dx: number, dy: number): PlaneView {
  const { redStops, blueStops } = view.centre
  return {
    ...view,
    centre: { redStops: redStops - dx * view.stopsPerPx, blueStops: blueStops + dy * view.stopsPerPx },
  }
}

/** The view `factor` times closer, with the gains under (x, y) staying where they are. */
export function zoomedView(view: PlaneView, size: PadSize, x: number, y: number, factor: number): PlaneView {
  const stopsPerPx = Math.min(Math.max(view.stopsPerPx / factor, finest), coarsest)
  const held = gainsAt(view, size, x, y)
  const moved = gainsAt({ ...view, stopsPerPx }, size, x, y)
  return {
    stopsPerPx,
    centre: {
      redStops: view.centre.redStops + held.redStops - moved.redStops,
      blueStops: view.centre.blueStops + held.blueStops - moved.blueStops,
    },
  }
}

/** Distance between lines of the grid in stops: 1, 2 or 5 times a power of ten. */
export function gridStep({ stopsPerPx }: PlaneView): number {
  const least = closestLinesPx * stopsPerPx
  const power = 10 ** Math.floor(Math.log10(least))
  return power * ([1, 2, 5].find((times) => times * power >= least) ?? 10)
}

/** The multiples of `step` between two values. */
export function gridValues(from: number, to: number, step: number): number[] {
  const first = Math.ceil(from / step)
  const count = Math.max(Math.floor(to / step) - first + 1, 0)
  return Array.from({ length: count }, (_, i) => (first + i) * step)
}
