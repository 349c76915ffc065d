// Times for benches: our work and a general tool's on the same file, in turns, so that a busy machine burdens both alike.
import { hasTool, say } from '../support/outside-tools.ts'

const runs = 3

async function secondsOf(work: () => unknown): Promise<number> {
  const started = performance.now()
  await work()
  return (performance.now() - started) / 1000
}

export interface Seconds {
  readonly ours: number
  /** null where one of the tools is missing here. */
  readonly theirs: number | null
}

/** The quickest of three runs of each. `commands` are run one after the other. */
export async function compareSeconds(work: () => unknown, commands: readonly (readonly string[])[]): Promise<Seconds> {
  const hasAll = commands.every(([name]) => hasTool(name))
  let [ours, theirs] = [Infinity, Infinity]
  for (let run = 0; run < runs; run++) {
    ours = Math.min(ours, await secondsOf(work))
    if (!hasAll) continue
    theirs = Math.min(theirs, await secondsOf(() => commands.forEach(([name, ...words]) => say(name, words))))
  }
  return { ours, theirs: hasAll ? theirs : null }
}
