// The sensor data of an opened file by the shortest faithful route: the mosaic with levels from the file's tags or from a
// probe; three channels where there is no plain mosaic. Upright when it leaves here.
import { sensorCell } from '../frame/cell.ts'
import type { SensorData } from '../frame/frame.ts'
import { uprightLinear, uprightMosaic } from '../sensor/turn-upright.ts'
import { DecodeError, type DecodeFailure } from './decode-error.ts'
import { dngLinearLayout, dngMosaicLayout, dngWarnings, findRawDirectory } from './dng-layout.ts'
import type { LibRawMetadata, LibRawMosaic } from './libraw.ts'
import { type OpenedFile, orientationOf, type RawSource, withOpenedFile } from './opened-file.ts'
import { plainSettings, probeMosaic } from './probe-layout.ts'
import type { MosaicLayout } from './sensor-layout.ts'
import type { TiffDirectory } from './tiff-directories.ts'

export interface ReadSensor {
  readonly sensor: SensorData
  readonly warnings: readonly string[]
}

/** Stops the decoder from subtracting black, so that noise below it is kept. */
const keepBlack = { userBlack: 0, userCblack: [0, 0, 0, 0] }
/** Codes of `filters` below this name special arrays; only that of 6×6 is understood. */
const leastFilterWord = 1000
const sixBySixFilters = 9

function turnMosaic(mosaic: LibRawMosaic, { area, ...levels }: MosaicLayout, metadata: LibRawMetadata): SensorData {
  const stored = { codes: mosaic.data, stride: mosaic.raw_width, samples: 1, ...levels } as const
  return uprightMosaic(stored, area, orientationOf(metadata))
}

/** Opens the source once more for its three channels; black has gone from them unless tags tell it. */
function readThreeChannels(source: RawSource, raw: TiffDirectory | undefined): SensorData {
  const settings = { ...plainSettings, noInterpolation: false, ...(raw ? keepBlack : {}) }
  return withOpenedFile(source, settings, ({ file, metadata }) => {
    const image = file.imageData()
    if (!image || image.colors !== 3) throw new DecodeError(source.fileName, { kind: 'unsupported packing' })
    const { width, height, data: codes } = image
    const area = { x: 0, y: 0, width, height }
    const layout = raw
      ? dngLinearLayout(raw, width, height)
      : { area, black: [0, 0, 0] as const, white: file.metadata(true).color_data.maximum }
    const stored = { codes, stride: width, samples: 3, black: layout.black, white: layout.white } as const
    return uprightLinear(stored, layout.area, orientationOf(metadata))
  })
}

/** @throws DecodeError where sensor data cannot mean a picture */
export function assertPicture(fileName: string, sensor: SensorData): void {
  const fail = (failure: DecodeFailure) => {
    throw new DecodeError(fileName, failure)
  }
  const blacks = sensor.kind === 'mosaic' ? sensor.black.codes : sensor.black
  if (!blacks.every((black) => black < sensor.white)) fail({ kind: 'no scale' })
  const colours = new Set(sensor.kind === 'mosaic' ? sensor.cfa.colours : [0, 1, 2])
  const mono = colours.size === 1 && colours.has(1)
  if (!mono && colours.size !== 3) fail({ kind: 'unsupported sensor', what: 'an unusual pattern of colours' })
  const cell = sensorCell(sensor).size
  if (sensor.width < cell || sensor.height < cell) fail({ kind: 'too small' })
}

function assertKnownColours({ fileName }: RawSource, { colors, filters }: LibRawMetadata): void {
  const fail = (what: string) => {
    throw new DecodeError(fileName, { kind: 'unsupported sensor', what })
  }
  if (colors !== 1 && colors !== 3) fail(`${colors} colours`)
  if (filters > 0 && filters < leastFilterWord && filters !== sixBySixFilters) fail('an unusual pattern of colours')
}

/** Reads a file that was opened with the settings of the probe. @throws DecodeError */
export function readSensor(source: RawSource, opened: OpenedFile, directories: readonly TiffDirectory[]): ReadSensor {
  const { file, metadata } = opened
  assertKnownColours(source, metadata)
  const warnings: string[] = []
  if (metadata.pixel_aspect !== 1) warnings.push('The sensor’s pixels are not square: the picture looks stretched.')
  const hasMosaic = metadata.filters !== 0 || metadata.colors === 1
  const raw =
    metadata.dng_version > 0 ? findRawDirectory(directories, metadata.raw_width, metadata.raw_height) : undefined
  if (raw) warnings.push(...dngWarnings(raw))

  if (raw && hasMosaic) {
    const layout = dngMosaicLayout(raw)
    if (!layout) {
      throw new DecodeError(source.fileName, { kind: 'unsupported sensor', what: 'an unusual pattern of colours' })
    }
    const mosaic = file.rawImageData()
    if (mosaic) return { sensor: turnMosaic(mosaic, layout, metadata), warnings }
  } else if (hasMosaic) {
    const probed = probeMosaic(source, opened)
    if (probed) {
      const { mosaic, layout } = probed
      return { sensor: turnMosaic(mosaic, layout, metadata), warnings: [...warnings, ...probed.warnings] }
    }
  }
  return { sensor: readThreeChannels(source, raw), warnings }
}
