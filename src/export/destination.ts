// Asks where an exported file should go, and hands over what could not be streamed there. Page only, not for workers.
// Browsers with file access get a handle to stream into; the others collect the file and download it.
import { fileSave, supported as hasFileAccess } from 'browser-fs-access'
import { isGivenUp } from '../text/thrown.ts'
import type { ExportFormat } from './export-picture.ts'

/** Exported pictures, and PNG for what is drawn from them to be looked at. */
type WrittenFormat = ExportFormat | 'png'

const types: Record<WrittenFormat, { readonly description: string; readonly mime: `image/${string}` }> = {
  tiff16: { description: 'TIFF picture', mime: 'image/tiff' },
  tiff8: { description: 'TIFF picture', mime: 'image/tiff' },
  jpeg: { description: 'JPEG picture', mime: 'image/jpeg' },
  png: { description: 'PNG picture', mime: 'image/png' },
}

const endingOf = (name: string) => name.slice(name.lastIndexOf('.')) as `.${string}`

/**
 * The file the user chose, 'download' where the browser cannot write files, null where they chose none. Must be called while a
 * press is handled.
 * @throws DOMException where the browser refuses to ask
 */
export async function chooseDestination(
  name: string,
  format: WrittenFormat,
): Promise<FileSystemFileHandle | 'download' | null> {
  if (!hasFileAccess) return 'download'
  const { description, mime } = types[format]
  const accepted = [{ description, accept: { [mime]: [endingOf(name)] } }]
  try {
    return await showSaveFilePicker({ suggestedName: name, types: accepted })
  } catch (reason) {
    if (isGivenUp(reason)) return null
    throw reason
  }
}

/** Downloads a collected file under `name`. */
export async function downloadFile(file: Blob, name: string, format: WrittenFormat): Promise<void> {
  const { description, mime } = types[format]
  await fileSave(new Blob([file], { type: mime }), { fileName: name, extensions: [endingOf(name)], description })
}
