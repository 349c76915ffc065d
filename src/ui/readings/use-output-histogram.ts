// The spread of the finished picture, read from a small copy that the graphics draw: one reading at a time, and the last
// picture is always read.
import { useEffect, useRef, useState } from 'react'

import { type ChannelSpread, outputHistogram } from '../../analysis/output-histogram.ts'
import { type Seen, useSeen } from './use-seen.ts'
import { useWorkbench } from '../workbench-context.tsx'

/** Width of the copy in pixels, least time between two readings and wait before a failed one is tried again, in ms (our choice). */
const copyWidthPx = 360
const everyMs = 200
const againMs = 400
/** Rest after a reading as a multiple of its time, so that slow graphics keep most of theirs for the picture (our choice). */
const restShare = 4

export function useOutputHistogram(): readonly ChannelSpread[] | null {
  const workbench = useWorkbench()
  const seen = useSeen(everyMs)
  const [spread, setSpread] = useState<readonly ChannelSpread[] | null>(null)
  const reading = useRef({ wanted: seen, isBusy: false, isLeft: false })

  useEffect(() => {
    const now = reading.current
    now.isLeft = false
    return () => void (now.isLeft = true)
  }, [])

  useEffect(() => {
    const now = reading.current
    now.wanted = seen
    async function read(): Promise<void> {
      now.isBusy = true
      let read: Seen | null = null
      while (now.wanted !== read && now.wanted.frameId !== null && !now.isLeft) {
        const { wanted } = now
        const startedAt = performance.now()
        const pictures = await workbench.thumbnails([wanted.chain], copyWidthPx).catch(() => null)
        if (pictures && !now.isLeft) setSpread(outputHistogram(pictures[0].data))
        if (pictures) read = wanted
        const restMs = pictures ? restShare * (performance.now() - startedAt) : againMs
        await new Promise((resolve) => setTimeout(resolve, restMs))
      }
      now.isBusy = false
    }
    if (!now.isBusy) void read()
  }, [workbench, seen])
  return spread
}
