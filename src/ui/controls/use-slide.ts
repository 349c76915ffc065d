// What hand and keys do on anything that slides: drag, arrows and Page keys, shift for fine; Delete and double-click reset, and
// Escape during a drag takes it back, as the system does where it takes the pointer away. One drag, or one held key, is one gesture.
import { useRef, type KeyboardEvent, type PointerEvent } from 'react'

import type { Gesture } from './gesture.ts'

/** Fine movement is a tenth of the plain one (our choice). */
const fine = 0.1

interface Slide {
  readonly value: number
  readonly initial: number
  /** What an arrow and a Page key move by. */
  readonly step: number
  readonly pageStep: number
  readonly gesture: Gesture
  /** Keys of its own beside the usual ones. */
  readonly ownKeys?: Readonly<Record<string, () => void>>
  /** Whether it slides up and down. */
  readonly isUpright?: boolean
  /** Value per CSS pixel of travel. */
  perPx(target: HTMLElement): number
  /** Brings the value to `wanted`, to the nearest multiple of `grain`. */
  change(wanted: number, grain: number): void
  /** What a press at the event's place makes of the value at once; by default nothing. */
  pressed?(event: PointerEvent<HTMLElement>): number | null
}

/** Handlers for the element that slides. */
export function useSlide(slide: Slide) {
  const { value, initial, step, pageStep, gesture, ownKeys, isUpright, perPx, change, pressed } = slide
  const drag = useRef<{ px: number; value: number } | null>(null)
  const pxOf = (event: PointerEvent) => (isUpright ? -event.clientY : event.clientX)
  const release = () => {
    drag.current = null
    gesture.end()
  }
  const giveUp = () => {
    drag.current = null
    gesture.cancel()
  }

  return {
    onPointerDown(event: PointerEvent<HTMLElement>) {
      if (event.button !== 0) return
      event.currentTarget.setPointerCapture(event.pointerId)
      const at = pressed?.(event) ?? null
      drag.current = { px: pxOf(event), value: at ?? value }
      if (at !== null) change(at, step)
    },
    onPointerMove(event: PointerEvent<HTMLElement>) {
      if (!drag.current) return
      const speed = event.shiftKey ? fine : 1
      const travelled = (pxOf(event) - drag.current.px) * perPx(event.currentTarget) * speed
      drag.current = { px: pxOf(event), value: drag.current.value + travelled }
      change(drag.current.value, step * speed)
    },
    onPointerUp: release,
    onPointerCancel: giveUp,
    onDoubleClick: () => gesture.set(initial),
    onKeyDown(event: KeyboardEvent<HTMLElement>) {
      const size = event.shiftKey ? step * fine : step
      const moves: Record<string, () => void> = {
        ArrowRight: () => change(value + size, size),
        ArrowUp: () => change(value + size, size),
        ArrowLeft: () => change(value - size, size),
        ArrowDown: () => change(value - size, size),
        PageUp: () => change(value + pageStep, step),
        PageDown: () => change(value - pageStep, step),
        Delete: () => gesture.set(initial),
        ...ownKeys,
      }
      if (event.key === 'Escape' && drag.current) giveUp()
      else if (!moves[event.key] || event.ctrlKey || event.metaKey || event.altKey) return
      else moves[event.key]()
      event.preventDefault()
      event.stopPropagation()
    },
    onKeyUp: () => !drag.current && gesture.end(),
    onBlur: gesture.end,
  }
}
