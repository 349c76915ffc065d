// What a command answers to `--help` or `-h`: its usage, and nothing else happens.
import process from 'node:process'

/** Prints `usage` and ends the process with 0 where help is asked for among `words`. */
export function answerHelp(usage: string, words: readonly string[] = process.argv.slice(2)): void {
  if (!words.includes('--help') && !words.includes('-h')) return
  console.log(usage)
  process.exit(0)
}
