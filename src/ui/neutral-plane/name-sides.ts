// On which side of its point a name stands, so that names of neighbouring points neither cover each other nor a point.

import type { PadSize } from './plane-view.ts'

export type NameSide = 'right' | 'left' | 'above' | 'below'

interface Box {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

/** Height of a name, width of a letter, and widest name, in CSS pixels, as the style sheet has them. */
const heightPx = 16
const letterPx = 7.5
const widestPx = 84
/** Half the width of a drawn point, and the distance from its middle to its name. */
const pointPx = 7
const gapPx = 10

function boxOf({ x, y }: { x: number; y: number }, name: string, side: NameSide): Box {
  const width = Math.min(name.length * letterPx, widestPx)
  const left = side === 'right' ? x + gapPx : side === 'left' ? x - gapPx - width : x - width / 2
  const top = side === 'above' ? y - gapPx - heightPx : side === 'below' ? y + gapPx : y - heightPx / 2
  return { left, top, right: left + width, bottom: top + heightPx }
}

const sides: readonly NameSide[] = ['right', 'left', 'above', 'below']
const overlap = (a: Box, b: Box) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom

const isWithin = ({ left, top, right, bottom }: Box, size: PadSize | null) =>
  size === null || (left >= 0 && top >= 0 && right <= size.width && bottom <= size.height)

/**
 * A side for each named point in CSS pixels; `others` are points without a name. Names stay on the pad of `size` where they can; where no
 * side is free, the first on the pad, else the right.
 */
export function nameSides(
  named: readonly { readonly x: number; readonly y: number; readonly name: string }[],
  others: readonly { readonly x: number; readonly y: number }[] = [],
  size: PadSize | null = null,
): NameSide[] {
  const taken: Box[] = [...named, ...others].map(({ x, y }) => {
    return { left: x - pointPx, top: y - pointPx, right: x + pointPx, bottom: y + pointPx }
  })
  return named.map((point) => {
    const onPad = sides.filter((each) => isWithin(boxOf(point, point.name, each), size))
    const isFree = (each: NameSide) => !taken.some((box) => overlap(box, boxOf(point, point.name, each)))
    const side = onPad.find(isFree) ?? onPad[0] ?? 'right'
    taken.push(boxOf(point, point.name, side))
    return side
  })
}
