// The outline on the picture: the draft as a line that is still open, the sample as a closed one, and the cursor that sets
// corners by keys.
import { useEffect } from 'react'
import { useStore } from 'zustand'

import type { Place } from '../../workbench/session.ts'
import { dropOutline } from './outline-tool.ts'
import { screen } from '../screen-store.ts'
import { useSession, useWorkbench } from '../workbench-context.tsx'

/** Half the width of the cursor in CSS pixels (our choice). */
const cursorPx = 9

export function OutlineShape() {
  const workbench = useWorkbench()
  const draft = useStore(screen, (state) => state.outline)
  const corner = useStore(screen, (state) => state.corner)
  const isDrawing = useSession((session) => session.tool === 'probe' && session.sampleWay === 'outline')
  const probe = useSession((session) => session.probe)
  useSession((session) => session.view)
  useStore(screen, (state) => state.pictureSize)
  useEffect(() => {
    if (!isDrawing) screen.setState({ corner: null })
    return dropOutline
  }, [isDrawing])
  if (!isDrawing) return null

  const cssOf = (place: Place) => workbench.cssOf(place)
  const points = (draft ?? probe?.outline?.map(([x, y]) => ({ x, y })) ?? [])
    .map(cssOf)
    .filter((css) => css !== null)
    .map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`)
    .join(' ')
  const cursor = corner && !(probe?.outline && !draft) ? cssOf(corner) : null
  return (
    <svg className="ring" data-reliability={draft ? 'good' : probe?.reading.reliability} aria-hidden="true">
      {['ring-under', 'ring-line'].map((layer) => (
        <g key={layer} className={layer}>
          {draft ? <polyline points={points} /> : <polygon points={points} />}
          {cursor && (
            <path
              d={`M${cursor.x - cursorPx},${cursor.y}h${2 * cursorPx}M${cursor.x},${cursor.y - cursorPx}v${2 * cursorPx}`}
            />
          )}
        </g>
      ))}
    </svg>
  )
}
