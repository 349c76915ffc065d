// The divided way of seeing: the frame as it is left of a line, what the probe or the board would make of it right of it. The
// line stays where it is put and is dragged anywhere along it; its handle at the lower edge is there for keys as well.
import { type CSSProperties, useRef, type KeyboardEvent, type PointerEvent } from 'react'
import { useStore } from 'zustand'

import { placeDivide } from './divide-tool.ts'
import { usePreviewName } from './preview-name.ts'
import { screen } from '../screen-store.ts'
import { useSession, useWorkbench } from '../workbench-context.tsx'

/** An arrow key moves the line by these shares of the window's width (our choice). */
const arrowShare = { plain: 0.01, shift: 0.1 }
/** The widest name of a half, and what stays free beside it, in CSS pixels (our choice). */
const widestPx = 240
const besidePx = 16

/** What the other half shows, or what to do where both are one. */
function useOtherName(): { readonly name: string; readonly isShown: boolean } {
  const isProbing = useSession((session) => session.probe?.neutral != null)
  const preview = usePreviewName()
  const name = isProbing ? 'Probe' : preview
  return name === null ? { name: 'Point at a neutral to see it here', isShown: false } : { name, isShown: true }
}

export function PictureDivide() {
  const workbench = useWorkbench()
  const divide = useSession((session) => session.divide)
  const other = useOtherName()
  const width = useStore(screen, (state) => state.pictureSize.width)
  const grip = useRef<{ x: number; divide: number } | null>(null)
  if (divide === null) return null

  const place = (share: number) => placeDivide(workbench, share)
  const room = (share: number): CSSProperties => ({
    maxWidth: Math.max(0, Math.min(widestPx, share * width - besidePx)),
  })
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
      <div className="divide-line" />
      <span className="divide-name divide-own" style={room(divide)}>
        As it is
      </span>
      <span className="divide-name divide-other" data-shown={other.isShown || undefined} style={room(1 - divide)}>
        {other.name}
      </span>
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
