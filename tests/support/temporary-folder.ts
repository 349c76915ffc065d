// A folder of a test file's own, gone when its tests are done.
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll } from 'vitest'

export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'rimeleaf-'))
  afterAll(() => rmSync(folder, { recursive: true }))
  return folder
}
