// Tells the style sheet at which edges of a line that scrolls sideways something lies hidden.
import { type RefObject, useEffect } from 'react'

/** Keeps `data-before` and `data-after` on the element while something lies beyond its left or right edge. */
export function useScrollEdges(element: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const line = element.current
    if (!line) return
    const tell = () => {
      const { scrollLeft, scrollWidth, clientWidth } = line
      line.toggleAttribute('data-before', scrollLeft > 1)
      line.toggleAttribute('data-after', scrollLeft + clientWidth < scrollWidth - 1)
    }
    const observer = new ResizeObserver(tell)
    for (const each of [line, ...line.children]) observer.observe(each)
    line.addEventListener('scroll', tell, { passive: true })
    return () => {
      observer.disconnect()
      line.removeEventListener('scroll', tell)
    }
  }, [element])
}
