// On which side of its point a name stands, so that names of neighbouring points neither cover each other nor a point.

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

/** A side for each named point in CSS pixels; `others` are points without a name. The right side where none is free. */
export function nameSides(
  named: readonly { readonly x: number; readonly y: number; readonly name: string }[],
  others: readonly { readonly x: number; readonly y: number }[] = [],
): NameSide[] {
  const taken: Box[] = [...named, ...others].map(({ x, y }) => {
    return { left: x - pointPx, top: y - pointPx, right: x + pointPx, bottom: y + pointPx }
  })
  return named.map((point) => {
    const side = sides.find((each) => !taken.some((box) => overlap(box, boxOf(point, point.name, each)))) ?? 'right'
    taken.push(boxOf(point, point.name, side))
    return side
  })
}
