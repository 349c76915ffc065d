// What the frame itself offers: likely neutrals, the best few until more are asked for, and then averages of the whole too.
import { useMemo, useRef, useState } from 'react'
import { Button } from 'react-aria-components/Button'

import type { NeutralOffer } from '../../analysis/candidates/neutral-offers.ts'
import { useThumbnails } from './board-thumbnails.ts'
import { thumbnailSize } from './finished-thumbnail.tsx'
import { isSameNeutral } from '../../edits/gains-text.ts'
import { usePresentNeutral } from './neutral-preview.ts'
import { OfferRow } from './offer-row.tsx'
import { useSession } from '../workbench-context.tsx'

const none: readonly NeutralOffer[] = []
const nothing = { offers: none, averages: none }
/** Offers seen at once before more are asked for (our choice). */
const firstSeen = 4
/** Room for a picture in CSS pixels: the words beside it need as much. */
const box = { width: 84, height: 72 }

export function OfferList() {
  const found = useSession((session) => session.offers)
  const hasFrame = useSession((session) => session.shown !== null)
  const aspect = useSession((session) => session.shown?.facts.aspect ?? 1)
  const present = usePresentNeutral()
  const section = useRef<HTMLElement>(null)
  const [seesAll, setSeesAll] = useState(false)
  const [currentId, setCurrentId] = useState<string | null>(null)
  const { offers, averages } = found ?? nothing
  const seen = useMemo(
    () => (seesAll ? [...offers, ...averages] : offers.slice(0, firstSeen)),
    [offers, averages, seesAll],
  )
  const neutrals = useMemo(() => seen.map(({ gains }) => gains), [seen])
  const size = useMemo(() => thumbnailSize(aspect, box), [aspect])
  const pictureOf = useThumbnails(neutrals, size.width)
  const current = seen.find(({ id }) => id === currentId) ?? seen[0]

  const hidden = Math.max(offers.length - firstSeen, 0) + averages.length
  const focusOffer = (index: number) => section.current?.querySelectorAll<HTMLElement>('.offer-face')[index]?.focus()
  const row = (offer: NeutralOffer) => (
    <OfferRow
      key={offer.id}
      offer={offer}
      picture={pictureOf(offer.gains)}
      size={size}
      isPresent={present !== null && isSameNeutral(offer.gains, present)}
      isCurrent={offer === current}
      onCurrent={() => setCurrentId(offer.id)}
      onStep={(side) => focusOffer(seen.indexOf(offer) + side)}
    />
  )
  if (!hasFrame) return null
  return (
    <section ref={section} className="offers" aria-labelledby="offers-title" aria-busy={found === null}>
      <h3 id="offers-title">{found === null ? 'Looking for suggestions' : 'Suggested'}</h3>
      {found && !found.colourLeft && (
        <p className="board-hint">No colour is left in this frame: another neutral changes its brightness at most.</p>
      )}
      <ol>{seen.slice(0, offers.length).map(row)}</ol>
      {seesAll && averages.length > 0 && (
        <>
          <h4>Averages of the whole frame</h4>
          <ol>{averages.map(row)}</ol>
        </>
      )}
      {hidden > 0 && (
        <Button className="button quiet offers-more" aria-expanded={seesAll} onPress={() => setSeesAll(!seesAll)}>
          {seesAll ? 'Only the best' : `${hidden} more`}
        </Button>
      )}
    </section>
  )
}
