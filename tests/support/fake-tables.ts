// The commands for colour tables of the workbench in memory: no file is read or made, the numbers are made up.
import type { StoreApi } from 'zustand/vanilla'

import { isMapping } from '../../src/edits/colour-map.ts'
import { operationById } from '../../src/operations/index.ts'
import type { BakeCommands } from '../../src/workbench/bake-commands.ts'
import type { ChainCommands } from '../../src/workbench/chain-commands.ts'
import type { SessionStore } from '../../src/workbench/session-store.ts'
import type { TableCommands } from '../../src/workbench/table-commands.ts'
import type { ShownEdit } from '../../src/workbench/workbench.ts'

export function fakeTables(
  session: SessionStore,
  edit: StoreApi<{ readonly shown: ShownEdit | null }>,
  { setValues }: ChainCommands,
): TableCommands & BakeCommands {
  return {
    async loadTable() {},
    chooseTable(stepId, table) {
      const name = session.getState().tables.find(({ id }) => id === table)?.name ?? ''
      setValues(stepId, { table, name }, `Colour table ${name}`)
    },
    async recallTables() {},
    forgetTable: async (tableId) =>
      session.setState(({ tables }) => ({ tables: tables.filter(({ id }) => id !== tableId) })),
    bakeSteps: () =>
      (edit.getState().shown?.chain ?? [])
        .filter(({ operation }) => !['neutral', 'outputTransform'].includes(operation))
        .map((step) => ({
          stepId: step.id,
          title: operationById(step.operation).title,
          mayLeave: step.operation !== 'secondLight' && !step.mask,
          isExact: step.operation !== 'exposureContrast',
          isMapping: isMapping(step),
        })),
    bakeTable: async ({ size, encoding }) => ({
      encoding: encoding === 'nearest' ? 'romm' : encoding,
      content: '',
      ofFrame: { count: 4096, mean: 2 / size, p99: 8 / size, largest: 30 / size, outside: 0 },
      ofGrid: { count: 2744, mean: 3 / size, p99: 12 / size, largest: 60 / size, outside: 0.12 },
    }),
    async saveTable() {},
  }
}
