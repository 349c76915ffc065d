// Brings the content of an edit, as any earlier version of the program wrote it, to the current version, one version at a
// time. Nothing is checked here but the number: the shape is held afterwards.
import { EditFault } from './edit.ts'
import { currentVersion } from './edit-schema.ts'

type Content = Readonly<Record<string, unknown>>

/** The step from each version to the next. */
const steps: Readonly<Record<number, (content: Content) => Content>> = {
  // Version 1 knew a chain and its filter only.
  1: (content) => ({ ...content, version: 2, marks: [] }),
}

/** The content in the current version; what has no known version is left to the check of its shape. @throws EditFault */
export function broughtUpToDate(content: unknown): unknown {
  const version = (content as { version?: unknown } | null)?.version
  if (typeof version !== 'number') return content
  if (version > currentVersion) {
    const words = `it was written by a newer Rimeleaf (${version}, known is ${currentVersion}): update to open it`
    throw new EditFault('version', words)
  }
  const step = steps[version]
  return step ? broughtUpToDate(step(content as Content)) : content
}
