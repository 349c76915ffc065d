// The words of `npm run render`, read and checked before any work begins.
import { parseArgs } from 'node:util'
import { OUTPUT_SPACES, outputSpaceById } from '../colour/output-space.ts'
import type { ExportSettings } from '../export/export-picture.ts'

export const renderUsage = `npm run render -- FILES --out DIR [options]

Finishes raw, JPEG and TIFF files without a browser, as the page would; one line for each picture written.

  --out DIR          folder that the pictures go to; made where it is missing
  --edit FILE        use the chain of an edit file instead of the opening chain
  --filter NM|full   filter in front of the lens (cut-on in nm) or full spectrum, for the opening chain
  --format tiff|jpeg (tiff)
  --bits 16|8        (16) TIFF only
  --space ${Object.keys(OUTPUT_SPACES).join('|')}  (srgb)
  --quality 1…100    (92) JPEG only
  --keep-location    write where the frame was taken
  --overwrite        replace pictures that are there already
  --help             print this`

export interface RenderOptions {
  readonly files: readonly string[]
  readonly out: string
  readonly edit: string | undefined
  /** null is full spectrum, undefined not stated. */
  readonly filterNm: number | null | undefined
  readonly overwrite: boolean
  readonly settings: ExportSettings
}

const oneOf = (name: string, value: string, known: readonly string[]): string => {
  if (!known.includes(value)) throw new RangeError(`--${name} takes ${known.join(' or ')}, not “${value}”.`)
  return value
}

const numberWithin = (name: string, value: string, least: number, most: number): number => {
  const number = Number(value)
  if (!(value.trim() && number >= least && number <= most))
    throw new RangeError(`--${name} takes a number from ${least} to ${most}, not “${value}”.`)
  return number
}

/** Options of a command line. @throws RangeError or TypeError with a sentence on what is wrong */
export function readRenderOptions(words: readonly string[]): RenderOptions {
  const { values, positionals } = parseArgs({
    args: [...words],
    allowPositionals: true,
    options: {
      out: { type: 'string' },
      edit: { type: 'string' },
      filter: { type: 'string' },
      format: { type: 'string', default: 'tiff' },
      bits: { type: 'string' },
      space: { type: 'string', default: 'srgb' },
      quality: { type: 'string', default: '92' },
      'keep-location': { type: 'boolean', default: false },
      overwrite: { type: 'boolean', default: false },
    },
  })
  if (positionals.length === 0) throw new RangeError('No file to render was named.')
  if (!values.out) throw new RangeError('--out must name the folder that the pictures go to.')
  const isJpeg = oneOf('format', values.format, ['tiff', 'jpeg']) === 'jpeg'
  if (isJpeg && values.bits === '16') throw new RangeError('A JPEG holds 8 bits: use --format tiff for 16.')
  const bits = oneOf('bits', values.bits ?? '16', ['16', '8'])
  return {
    files: positionals,
    out: values.out,
    edit: values.edit,
    filterNm:
      values.filter === undefined
        ? undefined
        : values.filter === 'full'
          ? null
          : numberWithin('filter', values.filter, 400, 1100),
    overwrite: values.overwrite,
    settings: {
      format: isJpeg ? 'jpeg' : bits === '8' ? 'tiff8' : 'tiff16',
      space: outputSpaceById(values.space).id,
      quality: numberWithin('quality', values.quality, 1, 100),
      keepLocation: values['keep-location'],
    },
  }
}
