// Times for benches: the median of a few runs, and the same for a general tool on the same file.
import { hasTool, say } from '../support/outside-tools.ts'

const runs = 3

/** Median seconds of `work`. */
export async function secondsOf(work: () => unknown): Promise<number> {
  const seconds: number[] = []
  for (let run = 0; run < runs; run++) {
    const started = performance.now()
    await work()
    seconds.push((performance.now() - started) / 1000)
  }
  return seconds.sort((a, b) => a - b)[runs >> 1]
}

/** Median seconds of commands run one after the other; null where one of them is missing here. */
export async function secondsOfCommands(commands: readonly (readonly string[])[]): Promise<number | null> {
  if (!commands.every(([name]) => hasTool(name))) return null
  return secondsOf(() => commands.forEach(([name, ...words]) => say(name, words)))
}
