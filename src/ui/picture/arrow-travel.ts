// Arrow keys as a way to go on the picture.
import type { KeyboardEvent } from 'react'

const directions: Record<string, readonly [number, number]> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
}

/** CSS pixels right and down that the key asks for, `shift` of them with shift; null for any other key. */
export function arrowTravel(event: KeyboardEvent, plain: number, shift: number): readonly [number, number] | null {
  const direction = directions[event.key]
  const px = event.shiftKey ? shift : plain
  return direction ? [direction[0] * px, direction[1] * px] : null
}
