// Stating the filter that a frame was taken through: a chain that stands as it opened becomes the one that frames behind this
// filter open with, as one change that undo takes back; any other chain stays. Either way a note says so.
import { defaultChain, isOpeningChain } from '../edits/default-chain.ts'
import type { EditStore } from '../edits/edit-store.ts'
import { operationById } from '../operations/index.ts'
import type { Chain } from '../operations/step.ts'
import type { ShownPicture } from './picture.ts'
import { notify, type SessionStore } from './session-store.ts'
import type { Workbench } from './workbench.ts'

interface FilterContext {
  readonly session: SessionStore
  readonly edits: EditStore
  /** States the filter of an entry and leaves its chain as it is. */
  readonly noteFilter: Workbench['stateFilter']
  shown(): Pick<ShownPicture, 'id' | 'facts'> | null
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

export function createFilterCommand({ session, edits, noteFilter, shown }: FilterContext): Workbench['stateFilter'] {
  return (id, filterNm) => {
    const current = shown()
    const before = edits.history(id)?.chain
    const isAsOpened = before !== undefined && current?.id === id && isOpeningChain(before, current.facts)
    if (isAsOpened) {
      edits.apply(id, `Chain for ${filterNm === null ? 'full spectrum' : `${filterNm} nm`}`, () =>
        defaultChain({ ...current.facts, filterNm }),
      )
      const after = edits.history(id)!.chain
      if (after !== before) {
        const { selectedStepId } = session.getState()
        if (!after.some((step) => step.id === selectedStepId)) session.setState({ selectedStepId: after[0].id })
        notify(session, 'note', changeWords(before, after, filterNm))
      }
    } else if (before)
      notify(
        session,
        'note',
        'The filter is noted. Your steps stay as they are, because you have already changed them.',
      )
    noteFilter(id, filterNm)
  }
}
