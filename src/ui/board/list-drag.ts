// Dragging one entry of a list up or down: where it would be dropped, and the drop. A finger that moves at once scrolls the list;
// one that rests on an entry first takes it along.
import { useEffect, useRef, useState, type PointerEvent, type RefObject } from 'react'

/** CSS pixels of travel that make a press a drag (our choice). */
const dragFromPx = 6
/** Rest of a finger that takes an entry up, in ms (our choice). */
const restMs = 400

export interface ListDrag {
  /** The entry that is carried, and the one whose place it would take. */
  readonly carried: { readonly from: number; readonly to: number } | null
  /** Handlers of the part of entry `index` that it is taken by. A press that became a drag is no click. */
  handlers(index: number): {
    onPointerDown(event: PointerEvent): void
    onPointerMove(event: PointerEvent): void
    onPointerUp(): void
    onPointerCancel(): void
  }
  /** Whether the click now being handled ends a drag. */
  endsDrag(): boolean
}

/** `list` is the element whose children are the entries. */
export function useListDrag(list: RefObject<HTMLElement | null>, onMove: (from: number, to: number) => void): ListDrag {
  const press = useRef<{ y: number; moved: boolean } | null>(null)
  const dragged = useRef(false)
  const resting = useRef<{ timer: number; y: number } | null>(null)
  const [carried, setCarried] = useState<ListDrag['carried']>(null)

  const entryAt = (clientY: number) => {
    const entries = [...(list.current?.children ?? [])]
    const under = entries.findIndex((entry) => clientY < entry.getBoundingClientRect().bottom)
    return under < 0 ? entries.length - 1 : under
  }
  // Passive listeners, which React adds, cannot keep the page from scrolling under the finger.
  useEffect(() => {
    const element = list.current
    const hold = (event: TouchEvent) => press.current && event.preventDefault()
    element?.addEventListener('touchmove', hold, { passive: false })
    return () => element?.removeEventListener('touchmove', hold)
  }, [list])

  const endRest = () => {
    clearTimeout(resting.current?.timer)
    resting.current = null
  }
  const rest = ({ clientY }: PointerEvent, index: number) => {
    const takeUp = () => {
      press.current = { y: clientY, moved: true }
      dragged.current = true
      setCarried({ from: index, to: index })
    }
    resting.current = { timer: window.setTimeout(takeUp, restMs), y: clientY }
  }
  const stop = () => {
    endRest()
    press.current = null
    setCarried(null)
  }
  return {
    carried,
    handlers: (index) => ({
      onPointerDown(event) {
        dragged.current = false
        if (event.button !== 0) return
        event.currentTarget.setPointerCapture(event.pointerId)
        if (event.pointerType === 'touch') return rest(event, index)
        press.current = { y: event.clientY, moved: false }
      },
      onPointerMove(event) {
        if (resting.current && Math.abs(event.clientY - resting.current.y) > dragFromPx) endRest()
        if (!press.current) return
        press.current.moved ||= Math.abs(event.clientY - press.current.y) > dragFromPx
        if (!press.current.moved) return
        dragged.current = true
        setCarried({ from: index, to: entryAt(event.clientY) })
      },
      onPointerUp() {
        if (carried && carried.to !== carried.from) onMove(carried.from, carried.to)
        stop()
      },
      onPointerCancel: stop,
    }),
    endsDrag: () => dragged.current,
  }
}
