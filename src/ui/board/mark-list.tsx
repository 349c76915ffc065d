// The marks in their order. The Tab key comes to one of them, arrow keys go on from there, with shift they move the mark.
import { useMemo, useRef, useState } from 'react'

import type { Marks } from '../../edits/marks.ts'
import { useThumbnails } from './board-thumbnails.ts'
import type { ThumbnailSize } from './finished-thumbnail.tsx'
import { isSameNeutral } from '../../edits/gains-text.ts'
import { useListDrag } from './list-drag.ts'
import { MarkCard, markHintId } from './mark-card.tsx'
import { usePresentNeutral } from './neutral-preview.ts'
import { pointAtNeutral } from '../screen-store.ts'
import { useWorkbench } from '../workbench-context.tsx'

interface MarkListProps {
  readonly marks: Marks
  readonly size: ThumbnailSize
  /** Ids of the marks that are blended. */
  readonly blended: readonly string[]
  readonly onToggleBlend: (markId: string) => void
}

export function MarkList({ marks, size, blended, onToggleBlend }: MarkListProps) {
  const workbench = useWorkbench()
  const present = usePresentNeutral()
  const list = useRef<HTMLOListElement>(null)
  const [currentId, setCurrentId] = useState<string | null>(null)
  const [said, setSaid] = useState('')
  const neutrals = useMemo(() => marks.map(({ gains }) => gains), [marks])
  const pictureOf = useThumbnails(neutrals, size.width)
  const current = marks.find(({ id }) => id === currentId) ?? marks[0]

  const focusMark = (index: number) =>
    list.current?.querySelectorAll<HTMLElement>('[data-mark] .mark-face')[index]?.focus()
  const move = (from: number, to: number) => {
    if (to < 0 || to >= marks.length) return
    const { id, name } = marks[from]
    workbench.moveMark(id, to)
    const at = workbench.edit.getState().shown?.marks.findIndex((mark) => mark.id === id) ?? to
    setSaid(`${name} is now mark ${at + 1} of ${marks.length}.`)
  }
  const remove = (index: number) => {
    pointAtNeutral(null)
    focusMark(index + 1 < marks.length ? index + 1 : index - 1)
    workbench.removeMark(marks[index].id)
  }
  const drag = useListDrag(list, move)

  return (
    <>
      <ol ref={list} className="marks" aria-label="Marks">
        {marks.map((mark, index) => (
          <MarkCard
            key={mark.id}
            mark={mark}
            index={index}
            count={marks.length}
            picture={pictureOf(mark.gains)}
            size={size}
            isPresent={present !== null && isSameNeutral(mark.gains, present)}
            isBlended={blended.includes(mark.id)}
            isCurrent={mark === current}
            drag={drag}
            onFocusMark={focusMark}
            onCurrent={() => setCurrentId(mark.id)}
            onMove={(to) => move(index, to)}
            onRemove={() => remove(index)}
            onToggleBlend={() => onToggleBlend(mark.id)}
          />
        ))}
      </ol>
      <span id={markHintId} hidden>
        Enter makes it neutral, F2 renames it, Delete removes it, shift with up or down arrow moves it
      </span>
      <output className="visually-hidden" aria-live="polite">
        {said}
      </output>
    </>
  )
}
