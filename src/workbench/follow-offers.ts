// What the shown frame offers as its neutral, found in a worker when the frame or its filter is another; and the memory of
// greys that were chosen among them.
import { wordsOf } from '../text/thrown.ts'
import type { NeutralOffer } from '../analysis/candidates/neutral-offers.ts'
import { sameColourStops } from '../analysis/candidates/suggestion.ts'
import type { EditStore } from '../edits/edit-store.ts'
import type { NeutralGains } from '../edits/marks.ts'
import { neutralGains } from '../edits/stack.ts'
import { lastingWorker } from './lasting-worker.ts'
import type { OfferWorker } from './offer-worker.ts'
import type { ShownPicture } from './picture.ts'
import { rememberedGrey, rememberGrey } from './remembered-greys.ts'
import { notify, type SessionStore } from './session-store.ts'

interface OfferContext {
  readonly session: SessionStore
  readonly edits: EditStore
  shown(): ShownPicture | null
}

const isNear = ({ gains }: NeutralOffer, { redStops, blueStops }: NeutralGains) =>
  Math.hypot(gains.redStops - redStops, gains.blueStops - blueStops) < sameColourStops

const inWorker = lastingWorker<OfferWorker>(
  () => new Worker(new URL('./offer-worker.ts', import.meta.url), { type: 'module' }),
  'the browser gave up. Reload the page and try again.',
)

export function followOffers({ session, edits, shown }: OfferContext): void {
  async function find(): Promise<void> {
    const picture = shown()
    const { shown: facts } = session.getState()
    session.setState({ offers: null })
    if (!picture || !facts) return
    const { filterNm, noise } = picture.facts
    const options = { filterNm: filterNm === null ? 0 : filterNm, remembered: rememberedGrey(facts) }
    try {
      const offers = await inWorker((remote) => remote(picture.frame.cells, noise, options))
      if (session.getState().shown === facts) session.setState({ offers })
    } catch (reason) {
      const words = wordsOf(reason)
      notify(session, 'problem', `No neutrals could be looked for in ${picture.frame.fileName}: ${words}`)
    }
  }

  /** A chosen neutral that was offered as a grey is worth remembering. */
  function remember(chosen: NeutralGains): void {
    const { shown: facts, offers } = session.getState()
    if (facts && offers?.offers.some((offer) => offer.isGrey && isNear(offer, chosen))) rememberGrey(facts, chosen)
  }

  session.subscribe((now, before) => {
    if (now.shown !== before.shown) void find()
  })
  edits.store.subscribe(({ frames }, { frames: before }) => {
    const id = session.getState().shown?.id ?? ''
    // A chain that opens was chosen by nobody; one that is being dragged is not yet.
    if (!before[id] || frames[id] === before[id] || frames[id]?.gesture) return
    const [now, then] = [frames[id] && neutralGains(frames[id].chain), neutralGains(before[id].chain)]
    if (now && (now.redStops !== then?.redStops || now.blueStops !== then.blueStops)) remember(now)
  })
}
