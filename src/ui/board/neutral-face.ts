// How a neutral is taken by its picture: pointing at it or focusing it shows it in the large picture, pressing it makes it
// the frame's. A finger cannot point, so its first press shows and the next does that.
import { type KeyboardEvent, type PointerEvent, useRef } from 'react'

import { usePointing } from '../controls/use-pointing.ts'
import { leaveNeutral, pointAtNeutral, type PointedNeutral, screen } from '../screen-store.ts'
import { useWorkbench } from '../workbench-context.tsx'

/** Handlers for the button that carries the picture; `changeName` is what undo will name. */
export function useNeutralFace(neutral: PointedNeutral, changeName: string) {
  const workbench = useWorkbench()
  const isFirstTouch = useRef(false)
  const shown = useRef(neutral)
  const show = () => {
    shown.current = neutral
    pointAtNeutral(neutral)
  }
  const leave = () => leaveNeutral(shown.current)
  const pointing = usePointing(show, leave)
  return {
    ...pointing,
    onPointerDownCapture(event: PointerEvent) {
      isFirstTouch.current = event.pointerType === 'touch' && screen.getState().pointed?.gains !== neutral.gains
    },
    onFocus: show,
    onBlur: leave,
    onKeyDown(event: KeyboardEvent) {
      if (event.key !== 'Escape' || screen.getState().pointed !== shown.current) return
      event.preventDefault()
      event.stopPropagation()
      leave()
    },
    onClick() {
      if (isFirstTouch.current) show()
      else {
        leave()
        workbench.adoptNeutral(neutral.gains, changeName)
      }
      isFirstTouch.current = false
    },
  }
}
