// Marks: places of a frame kept as candidate neutrals, in the order of the board. Pure, JSON-safe; they never enter history,
// because keeping a candidate changes no picture.

/** Gains in stops relative to green, as in the neutral step. */
export interface NeutralGains {
  readonly redStops: number
  readonly blueStops: number
}

export interface Mark {
  readonly id: string
  readonly name: string
  /** Where it was taken, 0…1 of the upright frame; null for a blend or a typed neutral. */
  readonly place: { readonly x: number; readonly y: number } | null
  readonly gains: NeutralGains
  /** Pinned marks stand first and are not cleared with the others. */
  readonly pinned: boolean
}
export type Marks = readonly Mark[]

/** Letters of marks without a name of their own: A…Z, then A2, B2… */
function nextLetter(marks: Marks): string {
  const used = new Set(marks.map((mark) => mark.name))
  for (let round = 1; ; round++) {
    for (let code = 65; code <= 90; code++) {
      const name = String.fromCharCode(code) + (round > 1 ? round : '')
      if (!used.has(name)) return name
    }
  }
}

/** A new mark with an unused id, named by the next free letter unless `name` is given. */
export function addMark(marks: Marks, gains: NeutralGains, place: Mark['place'], name?: string): Marks {
  const number = Math.max(0, ...marks.map(({ id }) => Number(id.slice(1)))) + 1
  return [...marks, { id: `m${number}`, name: name ?? nextLetter(marks), place, gains, pinned: false }]
}

export function removeMark(marks: Marks, id: string): Marks {
  return marks.filter((mark) => mark.id !== id)
}

/** A removed mark at `index` again; under a new id where another mark has taken its own meanwhile, unchanged where it is there. */
export function putBackMark(marks: Marks, mark: Mark, index: number): Marks {
  if (marks.includes(mark)) return marks
  const isTaken = marks.some(({ id }) => id === mark.id)
  const id = isTaken ? addMark(marks, mark.gains, null).at(-1)!.id : mark.id
  return pinnedFirst(marks.toSpliced(index, 0, { ...mark, id }))
}

/** Renames a mark; an empty name leaves the old one. */
export function renameMark(marks: Marks, id: string, name: string): Marks {
  const trimmed = name.trim()
  return trimmed ? marks.map((mark) => (mark.id === id ? { ...mark, name: trimmed } : mark)) : marks
}

/** Marks in the order that a board keeps: pinned ones before the others. */
export function pinnedFirst(marks: Marks): Marks {
  return [...marks.filter((mark) => mark.pinned), ...marks.filter((mark) => !mark.pinned)]
}

/** Pins or unpins a mark; pinned ones move to the front, in the order in which they were pinned. */
export function pinMark(marks: Marks, id: string, pinned: boolean): Marks {
  return pinnedFirst(marks.map((mark) => (mark.id === id ? { ...mark, pinned } : mark)))
}

/** Marks with those of another edit added that they do not hold yet; the newcomers get ids of their own. */
export function mergeMarks(marks: Marks, others: Marks): Marks {
  const textOf = ({ name, place, gains }: Mark) => [name, place?.x, place?.y, gains.redStops, gains.blueStops].join()
  const known = new Set(marks.map(textOf))
  let merged = marks
  for (const other of others) {
    if (known.has(textOf(other))) continue
    merged = addMark(merged, other.gains, other.place, other.name)
    if (other.pinned) merged = pinMark(merged, merged.at(-1)!.id, true)
  }
  return merged
}

/** Moves a mark to `index` among those pinned like it. */
export function moveMark(marks: Marks, id: string, index: number): Marks {
  const mark = marks.find((candidate) => candidate.id === id)
  if (!mark) return marks
  const others = removeMark(marks, id)
  const pinnedCount = others.filter((other) => other.pinned).length
  const [first, end] = mark.pinned ? [0, pinnedCount] : [pinnedCount, others.length]
  return others.toSpliced(Math.min(Math.max(index, first), end), 0, mark)
}

/** Gains of a mark moved on the neutral plane: it no longer belongs to a place. */
export function moveMarkGains(marks: Marks, id: string, gains: NeutralGains): Marks {
  return marks.map((mark) => (mark.id === id ? { ...mark, gains, place: null } : mark))
}
