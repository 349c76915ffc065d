// The divided way of seeing: the frame as it is left of a line, what the probe or the board would make of it right of it. The
// line stays where it is put; its handle stands at the lower edge, so that the probe may go everywhere else.
import { useRef, type KeyboardEvent, type PointerEvent } from 'react'
import { useStore } from 'zustand'

import { screen } from '../screen-store.ts'
import { useSession, useWorkbench } from '../workbench-context.tsx'

/** The line stays this far inside the picture's window, as a share of its width; an arrow key moves it by these (our choice). */
const leastShare = 0.02
const arrowShare = { plain: 0.01, shift: 0.1 }

/** What the other half shows, or null while both are one. */
function useOtherName(): string | null {
  const isProbing = useSession((session) => session.probe?.neutral != null)
  const isPreviewing = useSession((session) => session.preview !== null)
  const pointed = useStore(screen, (state) => state.pointed?.name)
  return isProbing ? 'Probe' : isPreviewing ? (pointed ?? 'Pointed at') : null
}

export function PictureDivide() {
  const workbench = useWorkbench()
  const divide = useSession((session) => session.divide)
  const other = useOtherName()
  const width = useStore(screen, (state) => state.pictureSize.width)
  const grip = useRef<{ x: number; divide: number } | null>(null)
  if (divide === null) return null

  const place = (share: number) => workbench.setDivide(Math.min(Math.max(share, leastShare), 1 - leastShare))
  const take = (event: PointerEvent) => {
    event.stopPropagation()
    event.currentTarget.setPointerCapture(event.pointerId)
    grip.current = { x: event.clientX, divide }
  }
  const move = (event: PointerEvent) => {
    event.stopPropagation()
    if (grip.current) place(grip.current.divide + (event.clientX - grip.current.x) / width)
  }
  const release = (event: PointerEvent) => {
    event.stopPropagation()
    grip.current = null
  }
  const press = (event: KeyboardEvent) => {
    const step = event.shiftKey ? arrowShare.shift : arrowShare.plain
    const moves: Record<string, number> = {
      ArrowLeft: divide - step,
      ArrowRight: divide + step,
      Home: 0,
      End: 1,
    }
    if (moves[event.key] === undefined || event.ctrlKey || event.metaKey || event.altKey) return
    place(moves[event.key])
    event.preventDefault()
    event.stopPropagation()
  }

  return (
    <div className="divide" style={{ left: Math.round(divide * width) }}>
      {other !== null && (
        <>
          <span className="divide-name divide-own">As it is</span>
          <span className="divide-name divide-other">{other}</span>
        </>
      )}
      <div
        className="divide-handle"
        // A native range cannot stand on the picture as its own line.
        // oxlint-disable-next-line jsx-a11y/prefer-tag-over-role
        role="slider"
        tabIndex={0}
        aria-label="Where the picture is divided"
        aria-valuemin={0}
        aria-valuemax={100}
        aria-valuenow={Math.round(divide * 100)}
        aria-valuetext={`${Math.round(divide * 100)} % from the left`}
        onPointerDown={take}
        onPointerMove={move}
        onPointerUp={release}
        onPointerCancel={release}
        onKeyDown={press}
      />
    </div>
  )
}
