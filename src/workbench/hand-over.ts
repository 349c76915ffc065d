// Files that a person hands over go where they belong: an edit file to the shown frame, everything else to the roll.
import { isEditFileName } from '../roll/edit-file.ts'
import type { Workbench } from './workbench.ts'

interface Receivers {
  openFrames: Workbench['openFiles']
  loadEdit: Workbench['loadEdit']
}

/** In a folder an edit file is a companion that lies beside its frame, and is passed by like the others. */
export function createHandOver({ openFrames, loadEdit }: Receivers): Workbench['openFiles'] {
  return async function openFiles(files, folderName) {
    if (folderName !== undefined) return openFrames(files, folderName)
    const edits = files.filter((file) => isEditFileName(file.name))
    const frames = files.filter((file) => !isEditFileName(file.name))
    // Each is a change of its own, in the order in which they were handed over.
    for (const file of edits) await loadEdit(file)
    if (frames.length > 0) await openFrames(frames)
  }
}
