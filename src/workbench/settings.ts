// Small things that the browser remembers for the page. Where it keeps nothing, as with site data blocked, all is as at first.
const nameOf = (entry: string) => `rimeleaf.${entry}`

export function readSetting(entry: string): string | null {
  try {
    return localStorage.getItem(nameOf(entry))
  } catch {
    return null
  }
}

export function writeSetting(entry: string, value: string): void {
  try {
    localStorage.setItem(nameOf(entry), value)
  } catch {
    // A full or forbidden store costs only the memory.
  }
}
