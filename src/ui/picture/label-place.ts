// Where the words beside the ring go: right of it, else left, else above or below; never over the sample, always in the window.

export interface Box {
  readonly width: number
  readonly height: number
}

/** Free distance between ring and words, and between words and the edge of the window, in CSS pixels (our choice). */
const gap = 12
const margin = 8

const clamp = (value: number, low: number, high: number) => Math.min(Math.max(value, low), Math.max(low, high))

/**
 * Upper left of a label of size `label` for a ring at `ring` in a window of size `window`, all in CSS pixels.
 * Where the ring fills the window no place is free of it and the label lies along the lower edge.
 */
export function placeLabel(ring: { x: number; y: number; radius: number }, label: Box, window: Box) {
  const reach = ring.radius + gap
  const alongY = clamp(ring.y - label.height / 2, margin, window.height - label.height - margin)
  const alongX = clamp(ring.x - label.width / 2, margin, window.width - label.width - margin)
  const right = ring.x + reach
  const left = ring.x - reach - label.width
  const below = ring.y + reach
  const above = ring.y - reach - label.height
  if (right + label.width + margin <= window.width) return { x: right, y: alongY }
  if (left >= margin) return { x: left, y: alongY }
  if (below + label.height + margin <= window.height) return { x: alongX, y: below }
  if (above >= margin) return { x: alongX, y: above }
  return { x: alongX, y: window.height - label.height - margin }
}
