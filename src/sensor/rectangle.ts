// An area of whole photosites or pixels.

export interface Rectangle {
  /** Left and top edge. */
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** Whether `area` lies within a picture of `width × height` from (0, 0) and is not empty. */
export function liesWithin(area: Rectangle, width: number, height: number): boolean {
  const { x, y } = area
  return x >= 0 && y >= 0 && area.width > 0 && area.height > 0 && x + area.width <= width && y + area.height <= height
}
