// A layer over the picture takes the focus while it is out and gives it back to where it came from when it goes.
import { useLayoutEffect, type RefObject } from 'react'

/** For as long as the component that shows the layer is there. */
export function useBorrowedFocus(layer: RefObject<HTMLElement | null>): void {
  useLayoutEffect(() => {
    const lender = document.activeElement
    const element = layer.current
    element?.focus({ preventScroll: true })
    return () => {
      const focused = document.activeElement
      const isStillHere = focused === document.body || element?.contains(focused)
      if (isStillHere && lender instanceof HTMLElement) lender.focus()
    }
  }, [layer])
}
