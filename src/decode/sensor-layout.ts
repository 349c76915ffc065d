// What stored codes mean: which part is the picture, which colour each photosite has, and the levels of black and white.
import type { CfaColour } from '../frame/frame.ts'
import type { RepeatingTable } from '../sensor/cfa.ts'
import type { Rectangle } from '../sensor/rectangle.ts'

export interface MosaicLayout {
  /** The picture within the stored codes. */
  readonly area: Rectangle
  /** Both relative to the first stored code. */
  readonly colours: RepeatingTable<CfaColour>
  readonly black: RepeatingTable<number>
  readonly white: number
}

export interface LinearLayout {
  readonly area: Rectangle
  readonly black: readonly [number, number, number]
  readonly white: number
}

/** `crop`, given relative to `area`, within the stored codes; `area` where the crop does not fit into it. */
export function cropWithin(area: Rectangle, crop: Rectangle): Rectangle {
  const fits = crop.x >= 0 && crop.y >= 0 && crop.width > 0 && crop.height > 0
  if (!fits || crop.x + crop.width > area.width || crop.y + crop.height > area.height) return area
  return { x: area.x + crop.x, y: area.y + crop.y, width: crop.width, height: crop.height }
}
