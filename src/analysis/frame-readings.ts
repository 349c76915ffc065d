// What is told of a frame beside its picture, worked out when the picture is on its way: whoever opened the frame gives its pixels
// away first, so what is still to be read is kept as a copy, for a quarter of the time that the reading takes.
import type { Frame, FrameReadings } from '../frame/frame.ts'
import { sensorHistogram } from '../frame/sensor-histogram.ts'
import { referencePlaces } from './reference-places.ts'

/** Returns a function that reads the frame as it is now, even when its arrays have been handed over by then. */
export function laterReadings({ sensor, cells }: Pick<Frame, 'sensor' | 'cells'>): () => FrameReadings {
  const keptSensor = { ...sensor, codes: sensor.codes.slice() }
  const keptCells = { ...cells, unsmoothed: cells.unsmoothed.slice(), unclipped: cells.unclipped.slice() }
  return () => ({ histogram: sensorHistogram(keptSensor), places: referencePlaces(keptCells) })
}
