// A layer over the picture takes the focus while it is out and gives it back to where it came from when it goes.
import { useEffect, type RefObject } from 'react'

/** `isOut` tells whether the layer stands on the screen now. */
export function useBorrowedFocus(layer: RefObject<HTMLElement | null>, isOut: boolean): void {
  useEffect(() => {
    if (!isOut) return
    const lender = document.activeElement
    layer.current?.focus({ preventScroll: true })
    return () => {
      if (document.activeElement === document.body && lender instanceof HTMLElement) lender.focus()
    }
  }, [layer, isOut])
}
