// The name an exported picture gets: that of its frame with the ending of the format.
import type { ExportFormat } from './export-picture.ts'

const endings: Record<ExportFormat, string> = { tiff16: 'tif', tiff8: 'tif', jpeg: 'jpg' }

/** E.g. ("meadow.dng", "tiff16") → "meadow.tif". */
export function exportedName(fileName: string, format: ExportFormat): string {
  return `${fileName.replace(/\.[^.]*$/, '')}.${endings[format]}`
}
