// What operations may know of a frame, worked out once at opening. Facts are plain data: no operation looks at pixels.
import { type CellGrid, clippingLevel, makeCellGrid } from './cell-grid.ts'
import { sensorCell } from './cell.ts'
import type { FrameFacts, NoiseModel, Overview, SensorData } from './frame.ts'
import { findOpeningNeutral } from './opening-neutral.ts'

/** Mean `cameraRgb` over overview pixels whose largest photosite lies below `limit`, or null where there are none. */
function meanBelow({ rgba }: Overview, limit: number): [number, number, number] | null {
  let red = 0
  let green = 0
  let blue = 0
  let pixels = 0
  for (let i = 0; i < rgba.length; i += 4) {
    if (rgba[i + 3] >= limit) continue
    red += rgba[i]
    green += rgba[i + 1]
    blue += rgba[i + 2]
    pixels++
  }
  return pixels ? [red / pixels, green / pixels, blue / pixels] : null
}

/** Photosites of red that one overview pixel averages. */
export function cellPhotosites(sensor: SensorData, { scale }: Overview): number {
  const { size, counts } = sensorCell(sensor)
  return (scale / size) ** 2 * Math.max(counts[0], 1)
}

/** The smoothed cells of a frame's overview. */
export function frameCells(sensor: SensorData, overview: Overview, noise: NoiseModel): CellGrid {
  return makeCellGrid(overview, noise, cellPhotosites(sensor, overview))
}

/** The facts of upright sensor data, its overview and its cells. `cameraToXyz` and `daylightNeutral` as in `FrameFacts`. */
export function makeFrameFacts(
  sensor: SensorData,
  overview: Overview,
  cells: CellGrid,
  noise: NoiseModel,
  cameraToXyz: readonly number[] | null,
  daylightNeutral?: FrameFacts['daylightNeutral'],
): FrameFacts {
  // Where every pixel is clipped, all count.
  const meanCameraRgb = meanBelow(overview, clippingLevel) ?? meanBelow(overview, Infinity) ?? [0, 0, 0]
  return {
    meanCameraRgb,
    referenceNeutral: findOpeningNeutral(cells, meanCameraRgb),
    noise,
    cameraToXyz,
    daylightNeutral,
    filterNm: undefined,
    aspect: sensor.width / sensor.height,
  }
}
