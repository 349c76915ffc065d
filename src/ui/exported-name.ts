// The name an exported picture gets: that of its frame with the ending of the format.
import type { ExportFormat } from '../workbench/workbench.ts'

const endings: Record<ExportFormat, string> = { tiff16: 'tif', tiff8: 'tif', jpeg: 'jpg' }

/** e.g. ("meadow.dng", "tiff16") → "meadow.tif". */
export function exportedName(fileName: string, format: ExportFormat): string {
  return `${fileName.replace(/\.[^.]*$/, '')}.${endings[format]}`
}
