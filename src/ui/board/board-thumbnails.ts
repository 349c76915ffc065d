// Finished thumbnails of many neutrals under the current chain. At most one drawing is asked for per animation frame, and none
// while the one before is under way: of all changes meanwhile only the last counts, so that the board never holds anything up.
import { useEffect, useRef, useState } from 'react'

import type { NeutralGains } from '../../edits/marks.ts'
import { type Chain, withProbe } from '../../edits/stack.ts'
import type { Workbench } from '../../workbench/workbench.ts'
import { useChain } from '../chain/selected-step.ts'
import { useSession, useWorkbench } from '../workbench-context.tsx'

interface Order {
  readonly frameId: string
  readonly chain: Chain
  /** How often the tables and planes that chains read have changed. */
  readonly supplyChanges: number
  readonly neutrals: readonly NeutralGains[]
  readonly widthPx: number
}
interface Drawn {
  readonly frameId: string
  readonly pictures: ReadonlyMap<string, ImageData>
}

const keyOf = ({ redStops, blueStops }: NeutralGains) => `${redStops} ${blueStops}`

/** Takes orders as fast as they come. */
function createThumbnailDesk(workbench: Workbench, show: (drawn: Drawn) => void) {
  let order: Order | null = null
  let scheduled = 0
  let busy = false

  async function draw(): Promise<void> {
    scheduled = 0
    if (busy || !order) return
    const { frameId, chain, neutrals, widthPx } = order
    order = null
    busy = true
    try {
      const chains = neutrals.map((gains) => withProbe(chain, gains))
      const pictures = await workbench.thumbnails(chains, widthPx)
      if (pictures) show({ frameId, pictures: new Map(neutrals.map((gains, i) => [keyOf(gains), pictures[i]])) })
    } finally {
      busy = false
      if (order) schedule()
    }
  }
  function schedule(): void {
    scheduled ||= requestAnimationFrame(() => void draw())
  }
  return {
    ask(next: Order) {
      order = next
      schedule()
    },
    close() {
      order = null
      cancelAnimationFrame(scheduled)
    },
  }
}

/**
 * The picture of each neutral, `width` CSS pixels wide, or null until it is drawn. `neutrals` must keep its identity while it
 * holds the same.
 */
export function useThumbnails(neutrals: readonly NeutralGains[], width: number) {
  const workbench = useWorkbench()
  const chain = useChain()
  const supplyChanges = useSession((session) => session.supplyChanges)
  const shown = useSession((session) => session.shown)
  const [drawn, setDrawn] = useState<Drawn | null>(null)
  const desk = useRef<ReturnType<typeof createThumbnailDesk> | null>(null)

  useEffect(() => {
    desk.current = createThumbnailDesk(workbench, setDrawn)
    return () => desk.current?.close()
  }, [workbench])
  useEffect(() => {
    if (!shown || chain.length === 0 || neutrals.length === 0) return
    const widthPx = Math.round(width * devicePixelRatio)
    desk.current?.ask({ frameId: shown.id, chain, supplyChanges, neutrals, widthPx })
  }, [chain, supplyChanges, shown, neutrals, width])

  return (gains: NeutralGains): ImageData | null =>
    (drawn?.frameId === shown?.id && drawn?.pictures.get(keyOf(gains))) || null
}
