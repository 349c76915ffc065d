// One mark: the finished picture that it would give, its name, its lamp for blending and its menu.
import { Pin } from 'lucide-react'
import { useRef, useState, type KeyboardEvent } from 'react'

import type { Mark } from '../../edits/marks.ts'
import { FinishedThumbnail, type ThumbnailSize } from './finished-thumbnail.tsx'
import { gainsText } from '../../edits/gains-text.ts'
import type { ListDrag } from './list-drag.ts'
import { MarkMenu } from './mark-menu.tsx'
import { MarkName } from './mark-name.tsx'
import { useNeutralFace } from './neutral-face.ts'
import { useWorkbench } from '../workbench-context.tsx'

/** Id of the words, somewhere on the page, that say which keys a mark takes. */
export const markHintId = 'mark-hint'

interface MarkCardProps {
  readonly mark: Mark
  readonly index: number
  readonly count: number
  readonly picture: ImageData | null
  readonly size: ThumbnailSize
  /** The frame's neutral is this one. */
  readonly isPresent: boolean
  readonly isBlended: boolean
  /** The one mark that the Tab key comes to. */
  readonly isCurrent: boolean
  readonly drag: ListDrag
  readonly onFocusMark: (index: number) => void
  readonly onCurrent: () => void
  readonly onMove: (toIndex: number) => void
  readonly onRemove: () => void
  readonly onToggleBlend: () => void
}

export function MarkCard(props: MarkCardProps) {
  const { mark, index, count, picture, size, isPresent, isBlended, isCurrent, drag } = props
  const workbench = useWorkbench()
  const [isEditing, setEditing] = useState(false)
  const face = useRef<HTMLButtonElement>(null)
  const tabIndex = isCurrent ? 0 : -1
  const { id, name, gains, place, pinned } = mark

  const handlers = useNeutralFace({ name: `mark ${name}`, gains, place }, `Neutral of ${name}`)
  const press = (event: KeyboardEvent) => {
    const side = event.key === 'ArrowUp' ? -1 : event.key === 'ArrowDown' ? 1 : 0
    if (event.ctrlKey || event.metaKey || event.altKey) return
    if (event.key === 'Delete') props.onRemove()
    else if (event.key === 'F2') setEditing(true)
    else if (side === 0) return handlers.onKeyDown(event)
    else if (event.shiftKey) props.onMove(index + side)
    else props.onFocusMark(index + side)
    event.preventDefault()
    event.stopPropagation()
  }
  const actions = [
    {
      id: 'adopt',
      label: 'Make it neutral',
      act: () => workbench.adoptNeutral(gains, `Neutral of ${name}`),
    },
    { id: 'rename', label: 'Rename', act: () => setEditing(true) },
    { id: 'pin', label: pinned ? 'Unpin' : 'Pin to the front', act: () => workbench.pinMark(id, !pinned) },
    { id: 'earlier', label: 'Move up', isDisabled: index === 0, act: () => props.onMove(index - 1) },
    { id: 'later', label: 'Move down', isDisabled: index === count - 1, act: () => props.onMove(index + 1) },
    { id: 'remove', label: 'Remove', act: props.onRemove },
  ]
  const { carried } = drag

  return (
    <li
      className="mark"
      data-mark
      data-present={isPresent || undefined}
      data-carried={carried?.from === index || undefined}
      data-drop={
        carried?.to === index && carried.from !== index ? (carried.to < carried.from ? 'before' : 'after') : undefined
      }
    >
      <button
        ref={face}
        type="button"
        className="mark-face"
        tabIndex={tabIndex}
        aria-label={`${name}: ${gainsText(gains)} stop${isPresent ? ', the frame’s neutral' : ''}`}
        aria-describedby={markHintId}
        {...drag.handlers(index)}
        {...handlers}
        onFocus={() => {
          props.onCurrent()
          handlers.onFocus()
        }}
        onKeyDown={press}
        onClick={() => !drag.endsDrag() && handlers.onClick()}
      >
        <FinishedThumbnail picture={picture} size={size} />
      </button>
      <div className="mark-line">
        <MarkName
          name={name}
          isEditing={isEditing}
          tabIndex={tabIndex}
          onEdit={() => setEditing(true)}
          onEnd={(typed, byKey) => {
            setEditing(false)
            if (typed !== null) workbench.renameMark(id, typed)
            if (byKey) face.current?.focus()
          }}
        />
        {pinned && <Pin className="mark-pin" aria-label="pinned" />}
        {count > 1 && (
          <label className="mark-blend">
            <input
              type="checkbox"
              className="mark-lamp"
              tabIndex={tabIndex}
              checked={isBlended}
              aria-label={`Blend ${name}`}
              onChange={props.onToggleBlend}
            />
            blend
          </label>
        )}
        <MarkMenu label={`More for ${name}`} actions={actions} tabIndex={tabIndex} />
      </div>
    </li>
  )
}
