// Files that a person hands over go where they belong: an edit file or a colour table to the shown frame, colour maps to the
// shelf, everything else to the roll.
import { isEditFileName } from '../roll/edit-file.ts'
import { isMapFileName } from '../roll/map-file.ts'
import { isTableFileName } from './table-commands.ts'
import type { Workbench } from './workbench.ts'

interface Receivers {
  openFrames: Workbench['openFiles']
  loadEdit: Workbench['loadEdit']
  loadTable: Workbench['loadTable']
  importMaps: Workbench['importMaps']
}

/** In a folder edit files and tables are companions that lie beside the frames, and are passed by like the others. */
export function createHandOver({ openFrames, loadEdit, loadTable, importMaps }: Receivers): Workbench['openFiles'] {
  return async function openFiles(files, folderName) {
    if (folderName !== undefined) return openFrames(files, folderName)
    const maps = files.filter((file) => isMapFileName(file.name))
    const edits = files.filter((file) => isEditFileName(file.name) && !isMapFileName(file.name))
    const tables = files.filter((file) => isTableFileName(file.name))
    const frames = files.filter((file) => !isEditFileName(file.name) && !isTableFileName(file.name))
    // Each is a change of its own, in the order in which they were handed over.
    for (const file of maps) await importMaps(file)
    for (const file of edits) await loadEdit(file)
    for (const file of tables) await loadTable(file)
    if (frames.length > 0) await openFrames(frames)
  }
}
