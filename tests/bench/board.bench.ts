// Twenty-four marks of a board drawn anew in a real browser, held to one drawing of the picture.
import { benchRow, type BenchRows } from '../../src/commands/bench-row.ts'
import type { BoardCost } from './board-cost.ts'
import { runInPage } from './run-in-page.ts'

export const rows: BenchRows = async function* () {
  const { renderer, board, picture } = await runInPage<BoardCost>('./board-cost.ts', 'measureBoard')
  const name = `board of 24 marks from a 4 MP overview on ${renderer.slice(0, 24)} ÷ one picture of 1600×1000`
  yield benchRow(name, board, 'ms', picture)
}
