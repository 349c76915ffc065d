// The file that colours leave as: steps of a chain as `.cube` or ICC device link in a declared encoding, or as CLF on linear light;
// with its measured distance from the chain.
import { TABLE_ENCODINGS, type TableEncodingId } from '../colour/table-encoding.ts'
import { applyTransform } from '../luts/apply-transform.ts'
import { bakeCube } from '../luts/bake-cube.ts'
import { ENCODING_REMARK } from '../luts/colour-table.ts'
import { writeClfFile } from '../luts/write-clf-file.ts'
import { writeCubeFile } from '../luts/write-cube-file.ts'
import type { PipelineDescription } from '../pipeline/description.ts'
import { type ColourMap, coloursBefore, isPointwise, pointwiseMap, stepsOf } from '../pipeline/pointwise-map.ts'
import { asLinked, iccDeviceLink } from './icc-device-link.ts'
import { nearestEncoding } from './nearest-encoding.ts'
import { evenColours, type TableAccuracy, tableAccuracy, throughCube, throughLink } from './table-accuracy.ts'
import { stepNodes } from './step-nodes.ts'

export interface TableFileSettings {
  readonly format: 'cube' | 'clf' | 'icc'
  /** Points a side of a cube. */
  readonly size: 17 | 33 | 65
  /** What a `.cube` or device link takes and gives; CLF is on linear light. `nearest` is the one that comes nearest to the chain. */
  readonly encoding: TableEncodingId | 'nearest'
  readonly title: string
  /** The steps that leave, by id. */
  readonly stepIds: readonly string[]
}

export interface TableFile {
  /** What it takes and gives. */
  readonly encoding: TableEncodingId
  /** Text, or the bytes of a device link. */
  readonly content: string | Uint8Array<ArrayBuffer>
  /** Over the colours of the frame where the map begins, and over an even grid. */
  readonly ofFrame: TableAccuracy
  readonly ofGrid: TableAccuracy
}

/** A file name of a title: letters and digits of any script, joined by hyphens. */
export function tableFileName({ title, format }: Pick<TableFileSettings, 'title' | 'format'>): string {
  const stem = title
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
  return `${stem || 'colour-table'}.${format}`
}

function encodingFor(
  { format, encoding }: TableFileSettings,
  colours: Float64Array,
  direct: ColourMap,
): TableEncodingId {
  if (format === 'clf') return 'linear'
  return encoding === 'nearest' ? nearestEncoding(format, colours, direct) : encoding
}

/**
 * Makes the file. `pixels` are some of the frame's, six numbers each, to measure the file with.
 * Throws a RangeError where a step acts differently from place to place, or gives numbers that are not finite.
 */
export function tableFile(
  description: PipelineDescription,
  settings: TableFileSettings,
  pixels: Float64Array,
): TableFile {
  const { format, size, title, stepIds } = settings
  const steps = stepsOf(description, stepIds)
  const bound = steps.find((step) => !isPointwise(step))
  if (bound) throw new RangeError(`“${bound.operation.title}” acts differently from place to place.`)
  const direct = pointwiseMap(steps)
  const madeOf = steps.map(({ operation }) => operation.title).join(', ')
  const colours = coloursBefore(description, stepIds, pixels)
  const encoding = TABLE_ENCODINGS[encodingFor(settings, colours, direct)]
  const remarks = [
    `A colour table by Rimeleaf of: ${madeOf}`,
    ...(format === 'cube' ? [`Takes and gives ${encoding.description}`] : []),
    `${ENCODING_REMARK}${encoding.id}`,
  ]
  const measured = (through: (rgb: Float64Array) => boolean) => ({
    encoding: encoding.id,
    ofFrame: tableAccuracy(colours, direct, through),
    ofGrid: tableAccuracy(evenColours(), direct, through),
  })
  if (format !== 'clf') {
    const data = bakeCube(size, encoding, direct)
    if (!data.every(Number.isFinite)) throw new RangeError('These steps give numbers that are not finite.')
    const named = `${title} (${encoding.title} in and out)`
    if (format === 'cube') {
      const content = writeCubeFile({ title: named, remarks, size, data })
      return { content, ...measured(throughCube(data, size, encoding)) }
    }
    const content = iccDeviceLink({ title: named, ends: encoding.title, size, data })
    return { content, ...measured(throughLink(asLinked(data), size, encoding, direct)) }
  }
  const nodes = stepNodes(steps, size)
  const { description: numbers } = TABLE_ENCODINGS.linear
  const id = tableFileName(settings)
  const content = writeClfFile({ id, title, remarks, takes: numbers, gives: numbers, nodes })
  const through = (rgb: Float64Array) => {
    applyTransform({ nodes }, rgb)
    return true
  }
  return { content, ...measured(through) }
}
