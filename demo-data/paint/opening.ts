// Holes in a wall that faces the camera: doors and windows, straight or round-headed, in metres on the wall (x right, y up).

export interface Opening {
  readonly x0: number
  readonly x1: number
  readonly y0: number
  /** Top of a straight opening; where the round head springs from otherwise. */
  readonly y1: number
  readonly arched: boolean
}

/** Distance in metres from (x, y) to the edge, positive inside. */
export function insideOpening(o: Opening, x: number, y: number): number {
  const half = (o.x1 - o.x0) / 2
  const off = Math.abs(x - (o.x0 + o.x1) / 2)
  if (!o.arched) return Math.min(half - off, y - o.y0, o.y1 - y)
  if (y <= o.y1) return Math.min(half - off, y - o.y0)
  return half - Math.hypot(off, y - o.y1)
}

/** Highest point. */
export function openingTop(o: Opening): number {
  return o.arched ? o.y1 + (o.x1 - o.x0) / 2 : o.y1
}
