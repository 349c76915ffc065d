// The eight EXIF orientations (TIFF 6.0, tag 274) as a place in the upright picture → place in the stored one.

/** 1 upright · 2 mirrored · 3 half turn · 4 flipped · 5 transposed · 6 quarter turn to the right · 7 transverse · 8 to the left. */
export type Orientation = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8

/** Whether the upright picture is as wide as the stored one is high. */
export function swapsSides(orientation: Orientation): boolean {
  return orientation >= 5
}

/** The place in a stored picture of `width × height` that the upright picture shows at (x, y). */
export function storedPlace(
  orientation: Orientation,
  x: number,
  y: number,
  width: number,
  height: number,
): [x: number, y: number] {
  const [column, row] = swapsSides(orientation) ? [y, x] : [x, y]
  const fromRight = orientation === 2 || orientation === 3 || orientation === 7 || orientation === 8
  const fromBelow = orientation === 3 || orientation === 4 || orientation === 6 || orientation === 7
  return [fromRight ? width - 1 - column : column, fromBelow ? height - 1 - row : row]
}
