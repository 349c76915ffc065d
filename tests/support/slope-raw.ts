// A small raw file for journeys: a slope of light through a Bayer mosaic, quick to decode.
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'

import { writeDng } from './synthetic-dng.ts'
import { syntheticMosaic } from './synthetic-mosaic.ts'

/** Writes `slope.dng` of the given size in pixels into a folder and gives its path. */
export function writeSlope(folder: string, columns = 360, lines = 240): string {
  const path = join(folder, 'slope.dng')
  const { width, height, codes, cfa, black, white } = syntheticMosaic(columns, lines)
  writeFileSync(path, writeDng({ width, height, codes, cfa, black, white }))
  return path
}
