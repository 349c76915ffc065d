// One frame on the sheet. All cards are of one size, whatever the frame's shape, its name or what happened to it: a failed
// frame has no picture, so that its reason stands in the picture's place.
import { TriangleAlert } from 'lucide-react'
import { GridListItem } from 'react-aria-components/GridList'

import type { RollEntry } from '../../workbench/session.ts'
import { FrameProgress } from './frame-progress.tsx'

interface FrameCardProps {
  readonly entry: RollEntry
  readonly position: number
  readonly isShown: boolean
}

/** The sheet opens at the shown frame, in a long roll and for the keys, unless someone is already moving through it. */
function startHere(card: HTMLElement | null) {
  if (card && !card.parentElement?.contains(document.activeElement)) card.focus()
}

function filterLabel(filterNm: number | null | undefined): string {
  if (filterNm === undefined) return ''
  return filterNm === null ? 'full spectrum' : `${filterNm} nm`
}

export function FrameCard({ entry, position, isShown }: FrameCardProps) {
  const { state, fileName, pictureUrl } = entry
  return (
    <GridListItem
      id={entry.id}
      ref={isShown ? startHere : undefined}
      textValue={`Frame ${position}, ${fileName}${isShown ? ', shown' : ''}`}
      className="frame-card"
      data-shown={isShown || undefined}
    >
      <span className="frame-picture">
        {state.kind === 'failed' ? (
          <span className="frame-reason">
            <TriangleAlert aria-hidden="true" />
            <span>{state.reason}</span>
          </span>
        ) : (
          pictureUrl && <img src={pictureUrl} alt="" draggable={false} />
        )}
      </span>
      <span className="frame-line">
        <span className="frame-number">{position}</span>
        <span className="frame-name" title={fileName}>
          {fileName}
        </span>
      </span>
      <span className="frame-line">
        <span className="frame-filter">{filterLabel(entry.statedFilterNm)}</span>
        <FrameProgress state={state} />
      </span>
    </GridListItem>
  )
}
