// The board: candidate neutrals of the frame, each as the finished picture that it would give under the chain as it now is.
import { ImageDown, Plus } from 'lucide-react'
import { useMemo, useState } from 'react'

import type { Marks } from '../../edits/marks.ts'
import { BlendBar } from './blend-bar.tsx'
import { thumbnailSize } from './finished-thumbnail.tsx'
import { MarkList } from './mark-list.tsx'
import { OfferList } from './offer-list.tsx'
import { useForgetPointed, usePresentNeutral } from './neutral-preview.ts'
import { IconButton } from '../icon-button.tsx'
import { keepMark } from '../picture/probe-tool.ts'
import { useSession, useShownEdit, useWorkbench } from '../workbench-context.tsx'

const noMarks: Marks = []
/** Room for a mark's picture in CSS pixels: the column's width, and no more height than lets three stand in a small window. */
const markBox = { width: 184, height: 150 }
/** As many as a slider can blend. */
const mostBlended = 2

export function Board() {
  const workbench = useWorkbench()
  const marks = useShownEdit((edit) => edit?.marks ?? noMarks)
  const aspect = useSession((session) => session.shown?.facts.aspect ?? 1)
  const present = usePresentNeutral()
  const size = useMemo(() => thumbnailSize(aspect, markBox), [aspect])
  const [chosen, setChosen] = useState<readonly string[]>([])
  useForgetPointed()

  const blended = marks.length < mostBlended ? [] : chosen.filter((id) => marks.some((mark) => mark.id === id))
  const [first, second] = blended.map((id) => marks.find((mark) => mark.id === id)!)
  const toggle = (id: string) =>
    setChosen(blended.includes(id) ? blended.filter((other) => other !== id) : [...blended, id].slice(-mostBlended))

  return (
    <>
      <div className="board">
        <header className="board-head">
          <h3>{marks.length === 0 ? 'Marks' : marks.length === 1 ? '1 mark' : `${marks.length} marks`}</h3>
          <IconButton
            label="Keep the frame’s neutral as a mark"
            isDisabled={present === null}
            onPress={() => keepMark(workbench)}
          >
            <Plus />
          </IconButton>
          <IconButton
            label="Save the board as one sheet"
            isDisabled={marks.length === 0}
            onPress={() => void workbench.exportBoard()}
          >
            <ImageDown />
          </IconButton>
        </header>
        {marks.length === 0 && (
          <p className="board-hint">
            Marks are neutrals kept to choose from. Keep them while you probe, or from the suggestions.
          </p>
        )}
        <MarkList marks={marks} size={size} blended={blended} onToggleBlend={toggle} />
        <OfferList />
      </div>
      {first && !second && (
        <div className="blend-bar">
          <h3>Blend</h3>
          <p className="board-hint">Choose a second mark to blend with {first.name}.</p>
        </div>
      )}
      {first && second && (
        <BlendBar key={`${first.id} ${second.id}`} first={first} second={second} onDone={() => setChosen([])} />
      )}
    </>
  )
}
