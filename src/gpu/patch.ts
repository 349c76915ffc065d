// A patch is a rectangle of the sensor and what shows it; a view is drawn patch by patch.
import type { CodeTile } from './code-tile.ts'
import type { Area } from './pass.ts'
import type { Placement, TextureSource } from './place-uniforms.ts'

export type PatchSource =
  | ({ readonly kind: 'texture' } & TextureSource)
  | { readonly kind: 'codes'; readonly tile: CodeTile }

export interface Patch {
  /** Edges in sensor pixels. */
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
  readonly source: PatchSource
}

/** Columns of the target that may be drawn. */
export interface Columns {
  readonly from: number
  readonly to: number
}

/**
 * Where a patch falls on a target; null when nothing of it lies within `columns` and the target's rows. Neighbours share
 * their edge to the last bit, so no pixel is drawn twice or left out.
 */
export function patchArea(patch: Patch, placement: Placement, height: number, columns: Columns): Area | null {
  const x = (sensor: number) => placement.left + sensor * placement.zoom
  const y = (sensor: number) => placement.top + sensor * placement.zoom
  const [upper, lower] = [Math.max(y(patch.top), 0), Math.min(y(patch.bottom), height)]
  const [left, right] = [Math.max(x(patch.left), columns.from), Math.min(x(patch.right), columns.to)]
  if (left >= right || upper >= lower) return null
  const { screenHeight } = placement
  return screenHeight === null
    ? { left, right, bottom: upper, top: lower }
    : { left, right, bottom: screenHeight - lower, top: screenHeight - upper }
}
