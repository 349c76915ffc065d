// General tools outside the project that tests hold results against; a test says "skipped" where one is missing.
import { spawnSync } from 'node:child_process'

/** Whether a command of this name can be started here. */
export function hasTool(name: string): boolean {
  return !spawnSync(name, ['--version'], { stdio: 'ignore' }).error
}

/** What a tool says on both channels; throws where it does not end well. */
export function say(name: string, words: readonly string[], input?: string): string {
  const { status, stdout, stderr } = spawnSync(name, words, { encoding: 'utf8', input })
  if (status !== 0) throw new Error(`${name} ended with ${status}: ${stdout}${stderr}`)
  return stdout + stderr
}

/** Metadata by exiftool, names with their group, numbers as numbers. */
export function readMetadata(path: string): Record<string, string | number> {
  return JSON.parse(say('exiftool', ['-json', '-n', '-G1', path]))[0]
}

/** exiftool 12 lists the compressions of TIFF 6.0 (1992); 8 came with Adobe's TIFF technical notes of 2002. */
export const deflateIsYounger = 'Invalid value for IFD0 tag 0x0103 Compression'

/** exiftool's warnings and errors about a file's structure, none where all is well. */
export function structureFaults(path: string): string[] {
  const report = JSON.parse(say('exiftool', ['-json', '-validate', '-warning', '-error', '-a', path]))[0]
  if (!('Validate' in report)) throw new Error(`exiftool did not validate ${path}`)
  return [report.Warning ?? [], report.Error ?? []].flat()
}
