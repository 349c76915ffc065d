// A hover drawing in a real browser, held to a plain copy of the same view: what the finished picture costs beyond pixels.
import { benchRow, type BenchRows } from '../../src/commands/bench-row.ts'
import type { HoverCost } from './hover-cost.ts'
import { runInPage } from './run-in-page.ts'

export const rows: BenchRows = async function* () {
  const cost = await runInPage<HoverCost>('./hover-cost.ts', 'measureHover')
  const view = `1600×1000 on ${cost.renderer.slice(0, 24)}`
  yield benchRow(`hover drawing, opening chain, ${view} ÷ plain copy`, cost.opening, 'ms', cost.copy)
  yield benchRow('the same with a hue turn ÷ plain copy', cost.withHueTurn, 'ms', cost.copy)
  yield benchRow('opening chain at half size, as slow graphics hover ÷ plain copy', cost.moving, 'ms', cost.copy)
}
