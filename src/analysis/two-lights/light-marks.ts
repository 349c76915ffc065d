// Two marks on the same kind of grey, one in sun and one in shade: the direction and distance that light moves colours.

/** A pick in one light: log2 R/G, log2 B/G and log2 of red, of linear `cameraRgb`. */
export type LightMark = readonly [u: number, v: number, log2Red: number]

/** The mark that a pick of x, y and a mark's three numbers holds, as steps write it; null where nothing was picked. */
export function lightMarkOf(pick: readonly number[]): LightMark | null {
  return pick.length === 5 ? [pick[2], pick[3], pick[4]] : null
}

/** Distance of two lights in stops below which one neutral serves both (the noise of picks; at and beyond 780 nm always). */
const leastDistance = 0.06

/** Distance in stops that no two lights of one place reach (our choice): sun and open shade part by .44 at 590 nm, less behind longer filters. */
const mostDistance = 1

/** Distance of the two lights in the plane of log2 R/G and log2 B/G, in stops. */
export function lightDistance(sun: LightMark, shade: LightMark): number {
  return Math.hypot(shade[0] - sun[0], shade[1] - sun[1])
}

/** Whether the marks tell two lights apart, in colour and in level. */
export function areTwoLights(sun: LightMark, shade: LightMark): boolean {
  return lightDistance(sun, shade) >= leastDistance && shade[2] < sun[2]
}

/** Whether more than light parts the marks: one too dark to be read, or two kinds of surface. */
export function isBeyondLight(sun: LightMark, shade: LightMark): boolean {
  return lightDistance(sun, shade) > mostDistance
}
