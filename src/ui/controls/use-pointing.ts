// Pointing at a thing. The pointer points at what it comes to by its own moving: things that keys or the wheel bring under a
// pointer that rests are not pointed at, though the browser says that it came.
import { type PointerEvent, useRef } from 'react'

/** Handlers that tell of the pointer's coming and going; a finger cannot point. */
export function usePointing(onPoint: () => void, onLeave: () => void) {
  const isHere = useRef(false)
  const turn = (here: boolean, tell: () => void) => (event: PointerEvent) => {
    if (event.pointerType === 'touch' || isHere.current === here) return
    isHere.current = here
    tell()
  }
  return { onPointerMoveCapture: turn(true, onPoint), onPointerLeave: turn(false, onLeave) }
}
