// Opening files and the demo roll, choosing the frame on the bench, and noting its filter.
import type { EditStore } from '../edits/edit-store.ts'
import type { Frame } from '../frame/frame.ts'
import { framesOfFolder, leftOutSentence } from './folder-companions.ts'
import { makeDemoRoll } from './make-demo-roll.ts'
import type { OpenRoll } from './open-roll.ts'
import type { Picture } from './picture.ts'
import type { ShownFrame } from './session.ts'
import { changeEntry, nameRoll, notify, type SessionStore } from './session-store.ts'
import type { TaskList } from './tasks.ts'
import type { Workbench } from './workbench.ts'

export interface RollCommands extends Pick<Workbench, 'openDemoRoll' | 'showFrame' | 'showNeighbour'> {
  /** Opens files as frames, as `Workbench.openFiles` does. */
  openFrames: Workbench['openFiles']
  /** States the filter of an entry and leaves its chain as it is. */
  noteFilter: Workbench['stateFilter']
}

interface RollContext {
  readonly session: SessionStore
  readonly edits: EditStore
  readonly tasks: TaskList
  readonly roll: OpenRoll
  readonly picture: Picture
}

/** What kind of sensor a frame came from, in the words of the screen. */
function sensorKind({ sensor }: Frame): string {
  if (sensor.kind === 'linear') return 'three channels'
  const { columns, rows } = sensor.cfa
  return columns * rows === 1 ? 'one channel' : columns === 2 ? 'Bayer mosaic' : `${columns}×${rows} mosaic`
}

export function createRollCommands({ session, edits, tasks, roll, picture }: RollContext): RollCommands {
  function present(id: string, frame: Frame): void {
    const facts = roll.factsOf(id, frame)
    const { width, height } = frame.sensor
    const { fileName, metadata, developed = null, warnings } = frame
    const about = { facts, metadata, developed, warnings }
    const shown: ShownFrame = { id, fileName, width, height, sensorKind: sensorKind(frame), ...about }
    picture.show({ id, frame, facts })
    const selectedStepId = session.getState().selectedStepId ?? edits.history(id)?.chain[0]?.id ?? null
    session.setState({ shown, selectedStepId })
  }

  async function showFrame(id: string): Promise<void> {
    const { shownId } = session.getState()
    if (shownId !== null && shownId !== id) void roll.refreshPicture(shownId)
    if (shownId !== id) {
      picture.show(null)
      const view = { fit: true, zoom: 1, centre: { x: 0.5, y: 0.5 } }
      session.setState({ shownId: id, shown: null, probe: null, preview: null, view, selectedStepId: null })
    }
    // A frame at hand follows within the same turn, so that the screen never stands empty between two.
    const frame = roll.atHand(id) ?? (await roll.frame(id))
    if (!frame || session.getState().shownId !== id) return
    present(id, frame)
  }

  /** Decodes in turn; a frame goes on the bench unless another is there. A frame that failed keeps nobody off it. */
  async function supply(id: string, file: File): Promise<void> {
    const done = roll.supply(id, file)
    const { entries, shownId } = session.getState()
    const standing = entries.find((entry) => entry.id === shownId)
    if (!standing || standing.id === id || standing.state.kind === 'failed') await showFrame(id)
    await done
  }

  function noteFilter(id: string, filterNm: number | null): void {
    const current = picture.shown()
    changeEntry(session, id, { statedFilterNm: filterNm })
    if (current?.id === id) present(id, current.frame)
    void roll.refreshPicture(id)
  }

  return {
    async openFrames(given, folderName) {
      const files = folderName === undefined ? given : framesOfFolder(given)
      const leftOut =
        folderName === undefined ? null : leftOutSentence(folderName, files.length, given.length - files.length)
      if (leftOut !== null) notify(session, 'note', leftOut)
      if (files.length === 0) return
      nameRoll(session, folderName ?? null)
      const ids = files.map((file) => roll.announce(file.name))
      await Promise.all(ids.map((id, index) => supply(id, files[index])))
    },

    openDemoRoll: () => makeDemoRoll({ session, tasks, roll, supply }),

    showFrame,

    async showNeighbour(offset) {
      const { entries, shownId } = session.getState()
      const next = entries[entries.findIndex((entry) => entry.id === shownId) + offset]
      if (next) await showFrame(next.id)
    },

    noteFilter,
  }
}
