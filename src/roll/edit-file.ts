// An edit file: an edit as JSON text, to be kept beside the photographs or carried to other frames.
import { type Edit, EditFault } from './edit.ts'
import { contentOf, readContent } from './edit-content.ts'

/** Thrown where a file cannot be used; the message names file, place and reason. */
export class EditFileError extends Error {}

/** Largest text that is read: several large tables fit (our choice). */
const mostCharacters = 128 * 2 ** 20

const editEnding = '.edit.json'

/** The name of a frame's edit file: `dune-04.dng` becomes `dune-04.edit.json`. */
export function editFileName(frameFileName: string): string {
  return frameFileName.replace(/\.[^.]+$/, '') + editEnding
}

/** Whether a file that a person hands over is to be read as an edit and not as a frame. */
export function isEditFileName(fileName: string): boolean {
  return fileName.toLowerCase().endsWith('.json')
}

/** Text of an edit file. */
export function writeEditFile(edit: Edit): string {
  return `${JSON.stringify(contentOf(edit), null, 2)}\n`
}

/**
 * The edit in a file's text, its steps brought up to date.
 * @throws EditFileError naming `fileName`, the place in it and what is wrong there
 */
export async function readEditFile(text: string, fileName: string): Promise<Edit> {
  try {
    if (text.length > mostCharacters) throw new EditFault('the whole file', 'it is too large for an edit')
    return await readContent(parseJson(text))
  } catch (reason) {
    if (!(reason instanceof EditFault)) throw reason
    throw new EditFileError(`${fileName} cannot be used as an edit file, at ${reason.place}: ${reason.message}`, {
      cause: reason,
    })
  }
}

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch (reason) {
    throw new EditFault('the whole file', `it is not JSON (${(reason as Error).message})`)
  }
}
