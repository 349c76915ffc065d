// What the frame itself offers: likely neutrals first, averages of the whole last; the best few until more are asked for.
import { useMemo, useRef, useState } from 'react'
import { Button } from 'react-aria-components/Button'

import type { NeutralOffer } from '../../analysis/candidates/neutral-offers.ts'
import { useThumbnails } from './board-thumbnails.ts'
import { thumbnailSize } from './finished-thumbnail.tsx'
import { isSameNeutral } from './gains-text.ts'
import { usePresentNeutral } from './neutral-preview.ts'
import { OfferRow } from './offer-row.tsx'
import { useSession } from '../workbench-context.tsx'

const none: readonly NeutralOffer[] = []
/** Offers seen at once before more are asked for (our choice). */
const firstSeen = 4
/** Room for a picture in CSS pixels: the words beside it need as much. */
const box = { width: 84, height: 72 }

export function OfferList() {
  const found = useSession((session) => session.offers)
  const hasFrame = useSession((session) => session.shown !== null)
  const aspect = useSession((session) => session.shown?.facts.aspect ?? 1)
  const present = usePresentNeutral()
  const list = useRef<HTMLOListElement>(null)
  const [seesAll, setSeesAll] = useState(false)
  const [currentId, setCurrentId] = useState<string | null>(null)
  const offers = found?.offers ?? none
  const seen = useMemo(() => (seesAll ? offers : offers.slice(0, firstSeen)), [offers, seesAll])
  const neutrals = useMemo(() => seen.map(({ gains }) => gains), [seen])
  const size = useMemo(() => thumbnailSize(aspect, box), [aspect])
  const pictureOf = useThumbnails(neutrals, size.width)
  const current = seen.find(({ id }) => id === currentId) ?? seen[0]

  const focusOffer = (index: number) => list.current?.querySelectorAll<HTMLElement>('.offer-face')[index]?.focus()
  if (!hasFrame) return null
  return (
    <section className="offers" aria-labelledby="offers-title" aria-busy={found === null}>
      <h3 id="offers-title">{found === null ? 'Looking for suggestions' : 'Suggested'}</h3>
      {found && !found.colourLeft && (
        <p className="board-hint">No colour is left in this frame: another neutral changes its brightness at most.</p>
      )}
      <ol ref={list}>
        {seen.map((offer, index) => (
          <OfferRow
            key={offer.id}
            offer={offer}
            picture={pictureOf(offer.gains)}
            size={size}
            isPresent={present !== null && isSameNeutral(offer.gains, present)}
            isCurrent={offer === current}
            onCurrent={() => setCurrentId(offer.id)}
            onStep={(side) => focusOffer(index + side)}
          />
        ))}
      </ol>
      {offers.length > firstSeen && (
        <Button className="button quiet offers-more" aria-expanded={seesAll} onPress={() => setSeesAll(!seesAll)}>
          {seesAll ? 'Only the best' : `${offers.length - firstSeen} more`}
        </Button>
      )}
    </section>
  )
}
