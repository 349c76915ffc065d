// The spread of the finished picture, read from a small copy that the graphics draw: one reading at a time, and the last
// picture is always read.
import { useEffect, useRef, useState } from 'react'

import { type ChannelSpread, outputHistogram } from '../../analysis/output-histogram.ts'
import { useSeen } from './use-seen.ts'
import { useThrottled } from './use-throttled.ts'
import { useWorkbench } from '../workbench-context.tsx'

/** Width of the copy in pixels and least time between two readings in ms (our choice). */
const copyWidthPx = 480
const everyMs = 180

export function useOutputHistogram(): readonly ChannelSpread[] | null {
  const workbench = useWorkbench()
  const seen = useThrottled(useSeen(), everyMs)
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
      let last
      do {
        last = now.wanted
        const pictures = await workbench.thumbnails([last.chain], copyWidthPx)
        if (pictures && !now.isLeft) setSpread(outputHistogram(pictures[0].data))
      } while (now.wanted !== last && !now.isLeft)
      now.isBusy = false
    }
    if (!now.isBusy && seen.frameId !== null) void read()
  }, [workbench, seen])
  return spread
}
