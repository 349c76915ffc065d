// Stating the filter that a frame was taken through: a chain that stands as it opened becomes the one that frames behind this
// filter open with, as one change that undo takes back; any other chain stays. Either way a note says so, and offers to state it
// for the frames that the same camera took and that have none yet: a filter seldom changes within a roll.
import { defaultChain, isOpeningChain } from '../edits/default-chain.ts'
import type { EditStore } from '../edits/edit-store.ts'
import type { FrameFacts } from '../frame/frame.ts'
import { operationById } from '../operations/index.ts'
import type { Chain } from '../operations/step.ts'
import type { Notice } from './session.ts'
import { notify, type SessionStore } from './session-store.ts'
import type { Workbench } from './workbench.ts'

interface FilterContext {
  readonly session: SessionStore
  readonly edits: EditStore
  /** States the filter of an entry and leaves its chain as it is. */
  readonly noteFilter: Workbench['stateFilter']
  /** Facts of an entry with the filter that was stated; null before it is decoded. */
  factsOf(id: string): FrameFacts | null
}

/** A filter as a sentence has it. */
export const filterWords = (filterNm: number | null) =>
  filterNm === null ? 'full spectrum' : `a ${filterNm} nm filter`

/** What became of a chain that was opened anew. */
function changeWords(before: Chain, after: Chain, filterNm: number | null): string {
  const titlesOf = (chain: Chain, other: Chain) =>
    chain
      .filter(({ operation }) => !other.some((step) => step.operation === operation))
      .map(({ operation }) => `“${operationById(operation).title}”`)
      .join(' and ')
  const [added, removed] = [titlesOf(after, before), titlesOf(before, after)]
  const why = `as frames open for ${filterWords(filterNm)}`
  if (added && !removed) return `${added} came into the chain, ${why}; undo takes it out.`
  if (removed && !added) return `${removed} left the chain, ${why}; undo puts it back.`
  return `The chain was opened anew, ${why}; undo takes that back.`
}

const offerWhy = 'Other frames by this camera have no filter stated.'

/** Ids of the frames that the camera of `id` took and that no filter is stated for. */
function unstatedOfCamera(session: SessionStore, id: string): string[] {
  const { entries } = session.getState()
  const camera = entries.find((entry) => entry.id === id)?.camera
  if (!camera) return []
  return entries
    .filter((entry) => entry.id !== id && entry.camera === camera && entry.statedFilterNm === undefined)
    .map((entry) => entry.id)
}

export function createFilterCommand({ session, edits, noteFilter, factsOf }: FilterContext): Workbench['stateFilter'] {
  /** States the filter of one frame; what there is to say of its chain, or null. */
  function stateOne(id: string, filterNm: number | null): string | null {
    const before = edits.history(id)?.chain
    const facts = factsOf(id)
    const isAsOpened = before && facts && isOpeningChain(before, facts)
    if (isAsOpened)
      edits.apply(id, `Chain for ${filterNm === null ? 'full spectrum' : `${filterNm} nm`}`, () =>
        defaultChain({ ...facts, filterNm }),
      )
    noteFilter(id, filterNm)
    if (!before) return null
    if (!isAsOpened) return 'The filter is noted. Your steps stay as they are, because you have already changed them.'
    const after = edits.history(id)!.chain
    return after === before ? null : changeWords(before, after, filterNm)
  }

  /** The selection of the shown frame moves on where its step has gone. */
  function keepSelection(id: string): void {
    const { shownId, selectedStepId } = session.getState()
    const chain = edits.history(id)?.chain
    if (shownId !== id || !chain || selectedStepId === null) return
    if (!chain.some((step) => step.id === selectedStepId)) session.setState({ selectedStepId: chain[0].id })
  }

  function offerFor(id: string, filterNm: number | null): Notice['answer'] {
    const count = unstatedOfCamera(session, id).length
    if (count === 0) return undefined
    return {
      words: `State it for ${count} more`,
      act() {
        // Asked again: a filter stated since then stands.
        for (const other of unstatedOfCamera(session, id)) {
          stateOne(other, filterNm)
          keepSelection(other)
        }
      },
    }
  }

  return (id, filterNm) => {
    const words = stateOne(id, filterNm)
    keepSelection(id)
    const offer = offerFor(id, filterNm)
    if (offer) notify(session, 'note', `${words ?? 'The filter is noted.'} ${offerWhy}`, offer)
    else if (words) notify(session, 'note', words)
  }
}
