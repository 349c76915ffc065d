// Has the demo roll made: all frames are announced at once and appear one by one, each as soon as its raw file exists.
import { wordsOf } from '../text/thrown.ts'
import { type DemoFrame, demoFrames, demoMakers, demoRollName, startDemoRollMaker } from './demo-roll.ts'
import type { OpenRoll } from './open-roll.ts'
import { changeEntry, nameRoll, type SessionStore, setEntryState } from './session-store.ts'
import type { TaskList } from './tasks.ts'

interface DemoContext {
  readonly session: SessionStore
  readonly tasks: TaskList
  readonly roll: OpenRoll
  /** Gives an announced entry its file. */
  supply(id: string, file: File): Promise<void>
}

/** Resolves when every frame is made and decoded, or has failed with its reason in the roll. */
export async function makeDemoRoll({ session, tasks, roll, supply }: DemoContext): Promise<void> {
  const task = tasks.begin('Making the demo roll', { cancellable: true })
  nameRoll(session, demoRollName)
  const waiting = demoFrames.map((frame) => {
    const id = roll.announce(frame.fileName)
    changeEntry(session, id, { statedFilterNm: frame.filterNm })
    return { id, frame, made: 0 }
  })
  const all = [...waiting]
  if (session.getState().shownId === null) session.setState({ shownId: all[0].id })
  const decoding: Promise<void>[] = []

  async function make(maker: ReturnType<typeof startDemoRollMaker>, id: string, frame: DemoFrame): Promise<void> {
    try {
      task.signal.throwIfAborted()
      setEntryState(session, id, { kind: 'working', doing: 'Making', fraction: 0 })
      const file = await maker.make(frame.id, (fraction) => {
        setEntryState(session, id, { kind: 'working', doing: 'Making', fraction })
        all.find((one) => one.id === id)!.made = fraction
        task.progress(all.reduce((sum, one) => sum + one.made, 0) / all.length)
      })
      decoding.push(supply(id, file))
    } catch (error) {
      const reason = task.signal.aborted
        ? 'The demo roll was stopped before this frame was made. Open it again to have it made.'
        : `This demo frame could not be made: ${wordsOf(error)}`
      setEntryState(session, id, { kind: 'failed', reason })
    }
  }

  async function work(): Promise<void> {
    const maker = startDemoRollMaker()
    task.signal.addEventListener('abort', () => maker.end())
    for (let next = waiting.shift(); next; next = waiting.shift()) await make(maker, next.id, next.frame)
    maker.end()
  }

  await Promise.all(Array.from({ length: demoMakers }, work))
  task.end()
  await Promise.all(decoding)
}
