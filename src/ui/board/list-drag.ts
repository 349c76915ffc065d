// Dragging one entry of a list up or down with mouse or pen: where it would be dropped, and the drop. A finger scrolls the
// list instead and moves entries by their menu.
import { useRef, useState, type PointerEvent, type RefObject } from 'react'

/** CSS pixels of travel that make a press a drag (our choice). */
const dragFromPx = 6

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
  const [carried, setCarried] = useState<ListDrag['carried']>(null)

  const entryAt = (clientY: number) => {
    const entries = [...(list.current?.children ?? [])]
    const under = entries.findIndex((entry) => clientY < entry.getBoundingClientRect().bottom)
    return under < 0 ? entries.length - 1 : under
  }
  const stop = () => {
    press.current = null
    setCarried(null)
  }
  return {
    carried,
    handlers: (index) => ({
      onPointerDown(event) {
        dragged.current = false
        if (event.button !== 0 || event.pointerType === 'touch') return
        event.currentTarget.setPointerCapture(event.pointerId)
        press.current = { y: event.clientY, moved: false }
      },
      onPointerMove(event) {
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
