// What was thrown, in words for people.

/** The words themselves, as they were thrown. */
export function wordsOf(thrown: unknown): string {
  return thrown instanceof Error ? thrown.message : String(thrown)
}

/** Words closed by one full stop. */
export function closed(words: string): string {
  return words.replace(/\.?$/, '.')
}

/** Whether somebody gave it up, e.g. closed the file chooser; nothing needs to be said then. */
export function isGivenUp(thrown: unknown): boolean {
  return thrown instanceof DOMException && thrown.name === 'AbortError'
}
