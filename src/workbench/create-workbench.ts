// Puts the workbench together: stores, decoder, picture and the commands that connect them.
import { createStore } from 'zustand/vanilla'

import { startDecodeClient } from '../decode/decode-client.ts'
import { createEditStore } from '../edits/edit-store.ts'
import { redoName, undoName } from '../edits/history.ts'
import { createKeptStore } from '../roll/kept-store.ts'
import { createBoardCommand } from './board-command.ts'
import { createBakeCommands } from './bake-commands.ts'
import { createChainCommands } from './chain-commands.ts'
import { createChainPlanes } from './chain-planes.ts'
import { colourBefore } from './colour-before.ts'
import { createEditCommands } from './edit-commands.ts'
import { createExportCommand } from './export-command.ts'
import { followOffers } from './follow-offers.ts'
import { followPlanes } from './follow-planes.ts'
import { createFilterCommand } from './filter-command.ts'
import { createFrameCache } from './frame-cache.ts'
import { createHandOver } from './hand-over.ts'
import { createKeeping } from './keeping.ts'
import { createMapCommands } from './map-commands.ts'
import { createMaskCommands } from './mask-commands.ts'
import { createMarkCommands } from './mark-commands.ts'
import { neutralOutlook } from './neutral-outlook.ts'
import { createOpenRoll } from './open-roll.ts'
import { createPicture } from './picture.ts'
import { createProbeCommands } from './probe.ts'
import { createReadings } from './readings.ts'
import { createRollCommands } from './roll-commands.ts'
import { rollNeutrals } from './roll-neutrals.ts'
import { createSessionStore, dismissNotice } from './session-store.ts'
import { createSupplyStore } from './supply-store.ts'
import { createTableCommands } from './table-commands.ts'
import { createTaskList } from './tasks.ts'
import type { ShownEdit, Workbench } from './workbench.ts'

export function createWorkbench(): Workbench {
  const session = createSessionStore()
  const edits = createEditStore()
  const edit = createStore<{ shown: ShownEdit | null }>(() => ({ shown: null }))
  const frames = createFrameCache(() => session.getState().shownId)
  const tasks = createTaskList(session)
  const supplies = createSupplyStore()
  const picture = createPicture(session, edits, supplies)
  const planes = createChainPlanes(supplies, tasks)
  const store = createKeptStore()
  const keeping = createKeeping({ session, edits, supplies, store })
  const decoder = startDecodeClient()
  // While somebody looks for a file; some browsers have no word for being idle.
  ;(window.requestIdleCallback ?? setTimeout)(decoder.prepare)
  const roll = createOpenRoll({ session, edits, frames, supplies, planes, keeping, decoder })
  const { openFrames, noteFilter, ...rollCommands } = createRollCommands({ session, edits, tasks, roll, picture })
  const tableCommands = createTableCommands({ session, edits, tasks, keeping })
  const editCommands = createEditCommands({ session, edits, keeping, noteFilter, shown: picture.shown })

  /** Keeps what the screen reads of the shown frame's history in step with it. */
  function followEdits(): void {
    const id = session.getState().shown?.id
    const history = id === undefined ? undefined : edits.history(id)
    const before = edit.getState().shown
    if (!history) return before === null ? undefined : edit.setState({ shown: null })
    const now: ShownEdit = {
      chain: history.chain,
      marks: edits.marks(id!),
      undoName: undoName(history),
      redoName: redoName(history),
    }
    const keys = Object.keys(now) as (keyof ShownEdit)[]
    if (!before || keys.some((key) => before[key] !== now[key])) edit.setState({ shown: now })
  }
  edits.store.subscribe(followEdits)
  supplies.onChange(() => session.setState(({ supplyChanges }) => ({ supplyChanges: supplyChanges + 1 })))
  session.subscribe((now, before) => {
    if (now.shown !== before.shown) followEdits()
  })

  const mapCommands = createMapCommands({ session, edit, edits, keeping, store })

  followPlanes({ session, edits, planes, shown: picture.shown })
  followOffers({ session, edits, shown: picture.shown })

  return {
    session,
    edit,
    ...rollCommands,
    stateFilter: createFilterCommand({ session, edits, noteFilter, factsOf: roll.knownFacts }),
    ...editCommands,
    ...tableCommands,
    ...createBakeCommands({ session, edits, supplies, shown: picture.shown }),
    openFiles: createHandOver({ ...editCommands, ...tableCommands, ...mapCommands, openFrames }),
    countKept: keeping.countKept,
    forgetKept: keeping.forgetKept,
    attachPicture: picture.attachPicture,
    setView: picture.setView,
    zoomAbout: picture.zoomAbout,
    showClipping: (clippingShown) => session.setState({ clippingShown }),
    placeAt: picture.placeAt,
    cssOf: picture.cssOf,
    showReach: (reachOf) => session.setState({ reachOf }),
    preview: (preview) => session.setState({ preview }),
    setDivide: (divide) => session.setState({ divide: divide === null ? null : Math.min(Math.max(divide, 0), 1) }),
    thumbnails: picture.thumbnails,
    neutralOutlook() {
      const shown = picture.shown()
      const chain = shown && edits.history(shown.id)?.chain
      return shown && chain ? neutralOutlook(chain, shown.facts, supplies.of(shown.id)) : null
    },
    rollNeutrals: () => rollNeutrals(session.getState().entries, edits),
    colourBefore(stepId, place) {
      const shown = picture.shown()
      const history = shown && edits.history(shown.id)
      const { sampleRadiusPx } = session.getState()
      return history ? colourBefore(shown, supplies.of(shown.id), history.chain, stepId, place, sampleRadiusPx) : null
    },
    ...createReadings(supplies, picture.shown),
    ...mapCommands,
    ...createMaskCommands(session, edits, supplies),
    ...createMarkCommands(session, edits),
    exportBoard: createBoardCommand({
      session,
      edits,
      tasks,
      planes,
      thumbnails: picture.thumbnails,
      shownPicture: picture.shown,
    }),
    ...createProbeCommands(session, edits, picture.shown),
    ...createChainCommands(session, edits),
    exportShown: createExportCommand({ session, edits, tasks, supplies, planes, shown: picture.shown }),
    cancelTask: tasks.cancel,
    dismissNotice: (noticeId) => dismissNotice(session, noticeId),
  }
}
