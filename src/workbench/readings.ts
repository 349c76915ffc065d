// What the chain does to single places and to the spread of levels, read from the overview by the reference engine.
import type { Chain } from '../edits/stack.ts'
import { overviewColour, spreadPixels } from '../frame/overview-colour.ts'
import { describe } from '../pipeline/describe.ts'
import { renderOnCpu } from '../pipeline/render-on-cpu.ts'
import { traceChain } from '../pipeline/trace-chain.ts'
import type { ShownPicture } from './picture.ts'
import type { SupplyStore } from './supply-store.ts'
import type { Workbench } from './workbench.ts'

/** Overview pixels averaged to each side of a place: enough against noise, few enough to stay on one thing (our choice). */
const placeRadius = 2
/** Longer side of the spread pixels: some ten thousand are enough for a percentile of a tenth (our choice). */
const spreadSide = 128
/** Rows worked on before others get their turn: some 4 ms of work. */
const rowsPerTurn = 24

export function createReadings(
  supplies: SupplyStore,
  shown: () => ShownPicture | null,
): Pick<Workbench, 'trace' | 'pixelsBefore'> {
  const describeFor = (chain: Chain, { id, facts }: ShownPicture) =>
    describe(chain, facts, { space: 'srgb', supplies: supplies.of(id) })

  return {
    trace(chain, places) {
      const picture = shown()
      if (!picture) return null
      const description = describeFor(chain, picture)
      return places.map(({ x, y }) =>
        traceChain(description, overviewColour(picture.frame.overview, x, y, placeRadius), x, y),
      )
    },
    async pixelsBefore(chain, stepId) {
      const picture = shown()
      if (!picture) return null
      const asked = chain.map((step) => (step.id === stepId ? { ...step, enabled: true } : step))
      const description = describeFor(asked, picture)
      const before = description.steps.slice(
        0,
        description.steps.findIndex((step) => step.stepId === stepId),
      )
      const { width, height, rgba } = spreadPixels(picture.frame.overview, spreadSide)
      const rgb = new Float32Array(width * height * 3)
      for (let y = 0; y < height; y += rowsPerTurn) {
        const region = {
          x: 0,
          y,
          width,
          height: Math.min(rowsPerTurn, height - y),
          frameWidth: width,
          frameHeight: height,
        }
        const rows = rgba.subarray(y * width * 4, (y + region.height) * width * 4)
        rgb.set(renderOnCpu({ ...description, steps: before }, rows, region), y * width * 3)
        await new Promise((resolve) => setTimeout(resolve))
      }
      return shown()?.id === picture.id ? rgb : null
    },
  }
}
