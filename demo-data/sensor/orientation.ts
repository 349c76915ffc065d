// Where an upright picture's pixel lies on the sensor, for the EXIF orientations a hand-held camera writes
// (EXIF 2.3, tag 274): 1 level, 6 turned so that the top is on the sensor's left… shown by turning 90° clockwise, 8 anticlockwise.
import type { Size } from '../paint/scene.ts'

export type Orientation = 1 | 6 | 8

/** Size on the sensor of an upright picture. */
export function sensorSize(upright: Size, orientation: Orientation): Size {
  return orientation === 1 ? upright : { width: upright.height, height: upright.width }
}

/** Sensor column of the upright pixel (x, y). */
export function sensorColumn(upright: Size, orientation: Orientation, x: number, y: number): number {
  return orientation === 1 ? x : orientation === 6 ? y : upright.height - 1 - y
}

/** Sensor row of the upright pixel (x, y). */
export function sensorRow(upright: Size, orientation: Orientation, x: number, y: number): number {
  return orientation === 1 ? y : orientation === 6 ? upright.width - 1 - x : x
}
