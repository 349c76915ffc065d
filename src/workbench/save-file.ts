// Saves a text or picture file where the user wants it. What keeps it from that is told; a closed chooser is nobody's problem.
import { fileSave } from 'browser-fs-access'

import { closed, isGivenUp, wordsOf } from '../text/thrown.ts'
import { notify, type SessionStore } from './session-store.ts'

interface SavedFile {
  readonly name: string
  /** For the chooser, e.g. "Edit file". */
  readonly description: string
  readonly mediaType: string
  /** The chooser does not wait for it. */
  readonly content: BlobPart | Promise<BlobPart>
}

/** Whether the file is written. Must be called while a press is handled. */
export async function saveFile(
  session: SessionStore,
  { name, description, mediaType, content }: SavedFile,
): Promise<boolean> {
  const extension = name.slice(name.lastIndexOf('.'))
  try {
    const blob = Promise.resolve(content).then((part) => new Blob([part], { type: mediaType }))
    await fileSave(blob, { fileName: name, extensions: [extension], mimeTypes: [mediaType], description })
    return true
  } catch (reason) {
    if (!isGivenUp(reason)) notify(session, 'problem', `“${name}” was not saved: ${closed(wordsOf(reason))}`)
    return false
  }
}
