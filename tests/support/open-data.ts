// Reads published check values and open data that lie beside the repository; null where they are missing.
import { existsSync, readFileSync } from 'node:fs'

const folder = new URL('../../../shared/data/', import.meta.url)

/** The text of a file below the data folder, or null. */
function openText(path: string): string | null {
  const url = new URL(path, folder)
  return existsSync(url) ? readFileSync(url, 'utf8') : null
}

/** A JSON file below the data folder, or null. */
export function openJson<T>(path: string): T | null {
  const text = openText(path)
  return text === null ? null : (JSON.parse(text) as T)
}

/** The rows of a CSV file below the data folder by column name, or null. */
export function openCsv(path: string): Record<string, string>[] | null {
  const [header, ...lines] = openText(path)?.trim().split(/\r?\n/) ?? []
  if (!header) return null
  const names = header.split(',')
  return lines.map((line) => Object.fromEntries(line.split(',').map((cell, i) => [names[i], cell])))
}
