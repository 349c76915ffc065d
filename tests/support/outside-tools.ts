// General tools outside the project that tests hold results against; a test says "skipped" where one is missing.
import { spawnSync } from 'node:child_process'

/** Whether a command of this name can be started here. */
export function hasTool(name: string): boolean {
  return !spawnSync(name, ['--version'], { stdio: 'ignore' }).error
}
