// Finished pictures of the shown frame under each map, drawn one after the other: every map is a program of its own, and the first
// ones must not wait for the last. A change of chain begins anew; pictures stay until they are replaced.
import { useEffect, useRef, useState } from 'react'

import { type ColourMap, withMapping } from '../../edits/colour-map.ts'
import { useChain } from '../chain/selected-step.ts'
import { useSession, useWorkbench } from '../workbench-context.tsx'

/** Quiet time after a change before the shelf is drawn anew, in ms: a drag redraws the picture, not the shelf (our choice). */
const settleMs = 250

interface Drawn {
  readonly frameId: string
  readonly pictures: ReadonlyMap<string, ImageData>
}

/** The picture of each map by its id, `width` CSS pixels wide; null until it is drawn. `maps` in the order of drawing. */
export function useShelfThumbnails(maps: readonly ColourMap[], width: number): (mapId: string) => ImageData | null {
  const workbench = useWorkbench()
  const chain = useChain()
  const shown = useSession((session) => session.shown)
  const supplyChanges = useSession((session) => session.supplyChanges)
  const [drawn, setDrawn] = useState<Drawn | null>(null)
  const first = useRef(true)

  useEffect(() => {
    if (!shown || chain.length === 0) return
    let stale = false
    const widthPx = Math.round(width * devicePixelRatio)
    async function draw(): Promise<void> {
      for (const map of maps) {
        const pictures = await workbench.thumbnails([withMapping(chain, map.steps)], widthPx)
        if (stale || !shown) return
        if (!pictures) continue
        setDrawn((before) => {
          const known = before?.frameId === shown.id ? before.pictures : new Map<string, ImageData>()
          return { frameId: shown.id, pictures: new Map([...known, [map.id, pictures[0]]]) }
        })
      }
    }
    const timer = setTimeout(() => void draw(), first.current ? 0 : settleMs)
    first.current = false
    return () => {
      stale = true
      clearTimeout(timer)
    }
    // oxlint-disable-next-line react/exhaustive-deps -- tables and planes are read by the workbench itself
  }, [workbench, chain, shown, supplyChanges, maps, width])

  return (mapId) => (drawn?.frameId === shown?.id && drawn?.pictures.get(mapId)) || null
}
