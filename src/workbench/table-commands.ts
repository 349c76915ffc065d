// Colour tables that come from files: read in a worker, kept under the hash of their content, put into a step.
import { wordsOf } from '../text/thrown.ts'
import type { EditStore } from '../edits/edit-store.ts'
import { addStep, setValues, usualIndex } from '../edits/stack.ts'
import { colourLut } from '../operations/colour-lut.ts'
import type { Keeping } from './keeping.ts'
import { notify, type SessionStore } from './session-store.ts'
import { inTableWorker } from './table-client.ts'
import type { TaskList } from './tasks.ts'
import type { Workbench } from './workbench.ts'

export type TableCommands = Pick<Workbench, 'loadTable' | 'chooseTable' | 'recallTables' | 'forgetTable'>

interface TableContext {
  readonly session: SessionStore
  readonly edits: EditStore
  readonly tasks: TaskList
  readonly keeping: Keeping
}

/** Whether a file that a person hands over is to be read as a colour table and not as a frame. */
export function isTableFileName(fileName: string): boolean {
  return /\.(?:cube|clf)$/i.test(fileName)
}

export function createTableCommands({ session, edits, tasks, keeping }: TableContext): TableCommands {
  /** Puts a table into a step of the shown frame, a new one where none is named or selected. */
  function use(tableId: string, stepId?: string): void {
    const { shownId, selectedStepId, tables } = session.getState()
    const table = tables.find(({ id }) => id === tableId)
    const chain = shownId === null ? undefined : edits.history(shownId)?.chain
    if (shownId === null || !table) return
    if (!chain) {
      const words = `The colour table “${table.name}” is kept. Open a frame and add the step “${colourLut.title}” to use it.`
      return notify(session, 'note', words)
    }
    const { takes, gives } = table.facts ?? {}
    const values = { table: tableId, name: table.name, ...(takes && { takes }), ...(gives && { gives }) }
    const name = `Colour table ${table.name}`
    const target = chain.find(({ id, operation }) => operation === colourLut.id && id === (stepId ?? selectedStepId))
    if (target) return edits.apply(shownId, name, (now) => setValues(now, target.id, values))
    // A table for finished pictures belongs behind all that finishes them, one for light where colours are mapped.
    const isForLight = takes === 'acescct' || takes === 'linear'
    const place = isForLight ? usualIndex(chain, colourLut.id) : chain.length
    edits.apply(shownId, name, (now) => addStep(now, colourLut.id, values, place))
    const known = new Set(chain.map(({ id }) => id))
    const added = edits.history(shownId)?.chain.find(({ id }) => !known.has(id))
    if (added) session.setState({ selectedStepId: added.id })
  }

  return {
    async loadTable(file, stepId) {
      const task = tasks.begin(`Reading ${file.name}`)
      try {
        const { id, made } = await inTableWorker((remote) => remote.read(file))
        const { name, table, ...facts } = made
        keeping.adoptTables({ [id]: { name, table, facts } })
        use(id, stepId)
      } catch (reason) {
        notify(session, 'problem', wordsOf(reason))
      } finally {
        task.end()
      }
    },
    chooseTable: (stepId, tableId) => use(tableId, stepId),
    recallTables: keeping.recallTables,
    forgetTable: keeping.forgetTable,
  }
}
