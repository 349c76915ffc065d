// One suggestion: its finished picture and what speaks for it. Pointing shows it large, pressing makes it neutral, the sign beside it
// keeps it as a mark.
import { Plus } from 'lucide-react'
import type { KeyboardEvent } from 'react'

import type { NeutralOffer } from '../../analysis/candidates/neutral-offers.ts'
import { FinishedThumbnail, type ThumbnailSize } from './finished-thumbnail.tsx'
import { gainsText } from '../../edits/gains-text.ts'
import { IconButton } from '../icon-button.tsx'
import { useNeutralFace } from './neutral-face.ts'
import { useWorkbench } from '../workbench-context.tsx'

interface OfferRowProps {
  readonly offer: NeutralOffer
  readonly picture: ImageData | null
  readonly size: ThumbnailSize
  readonly isPresent: boolean
  /** The one that the Tab key comes to. */
  readonly isCurrent: boolean
  readonly onCurrent: () => void
  readonly onStep: (side: 1 | -1) => void
}

const capitalised = (words: string) => words.charAt(0).toUpperCase() + words.slice(1)

export function OfferRow({ offer, picture, size, isPresent, isCurrent, onCurrent, onStep }: OfferRowProps) {
  const workbench = useWorkbench()
  const { gains, place } = offer
  const reason = capitalised(offer.reason) || 'A colour of its own in the frame'
  const face = useNeutralFace({ name: 'suggested neutral', gains, place }, 'Suggested neutral')
  const press = (event: KeyboardEvent) => {
    const side = event.key === 'ArrowUp' ? -1 : event.key === 'ArrowDown' ? 1 : null
    if (side === null || event.shiftKey) return face.onKeyDown(event)
    event.preventDefault()
    event.stopPropagation()
    onStep(side)
  }
  return (
    <li className="offer" data-present={isPresent || undefined}>
      <button
        type="button"
        className="offer-face"
        tabIndex={isCurrent ? 0 : -1}
        aria-label={`${reason}; ${gainsText(gains)} stop${isPresent ? ', the frame’s neutral' : ''}`}
        {...face}
        onFocus={() => {
          onCurrent()
          face.onFocus()
        }}
        onKeyDown={press}
      >
        <span className="offer-picture">
          <FinishedThumbnail picture={picture} size={size} />
        </span>
        <span className="offer-reason">{reason}</span>
      </button>
      <IconButton label={`Keep as a mark: ${reason}`} onPress={() => workbench.addMark(gains, place)}>
        <Plus />
      </IconButton>
    </li>
  )
}
