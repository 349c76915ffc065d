// Places of the frame in CSS pixels of the picture's window, kept in step with view and window.
import { useStore } from 'zustand'

import type { Place } from '../../workbench/session.ts'
import { screen } from '../screen-store.ts'
import { useSession, useWorkbench } from '../workbench-context.tsx'

interface PlacesOnScreen {
  /** Null while no frame is shown. */
  cssOf(place: Place): { readonly x: number; readonly y: number } | null
  /** Size of the whole frame on screen; 0 while none is shown. */
  readonly frameWidthPx: number
  readonly frameHeightPx: number
}

export function usePlacesOnScreen(): PlacesOnScreen {
  const workbench = useWorkbench()
  useSession((session) => session.view)
  useSession((session) => session.shown)
  useStore(screen, (state) => state.pictureSize)
  const start = workbench.cssOf({ x: 0, y: 0 })
  const end = workbench.cssOf({ x: 1, y: 1 })
  return {
    cssOf: workbench.cssOf,
    frameWidthPx: start && end ? end.x - start.x : 0,
    frameHeightPx: start && end ? end.y - start.y : 0,
  }
}
