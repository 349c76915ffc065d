// A mark as a point of the pad. Pointed at, it previews its neutral in the picture; dragged, it previews every place on its way and
// keeps the last; Enter or a double-click makes it neutral.
import { useRef, useState } from 'react'

import type { Mark, NeutralGains } from '../../edits/marks.ts'
import { pointAtNeutral } from '../screen-store.ts'
import { useWorkbench } from '../workbench-context.tsx'
import { PlaneDot } from './plane-dot.tsx'
import type { NameSide } from './name-sides.ts'
import type { PadSize, PlaneView } from './plane-view.ts'

interface MarkDotProps {
  readonly mark: Mark
  readonly nameSide: NameSide
  readonly view: PlaneView
  readonly size: PadSize
}

export function MarkDot({ mark, nameSide, view, size }: MarkDotProps) {
  const workbench = useWorkbench()
  const [draft, setDraft] = useState<NeutralGains | null>(null)
  const moved = useRef<NeutralGains | null>(null)
  const gains = draft ?? mark.gains

  const show = (shown: NeutralGains | null) =>
    pointAtNeutral(
      shown && { name: `mark ${mark.name}`, gains: shown, place: shown === mark.gains ? mark.place : null },
    )
  const carry = (to: NeutralGains | null) => {
    moved.current = to
    setDraft(to)
  }
  const move = {
    change(to: NeutralGains) {
      carry(to)
      show(to)
    },
    end() {
      if (moved.current) workbench.setMarkGains(mark.id, moved.current)
      carry(null)
    },
    cancel() {
      carry(null)
      show(null)
    },
  }
  return (
    <PlaneDot
      kind="mark"
      name={mark.name}
      nameSide={nameSide}
      gains={gains}
      view={view}
      size={size}
      move={move}
      onPoint={(isPointed) => show(isPointed ? gains : null)}
      onAdopt={() => workbench.adoptNeutral(gains, `Neutral from ${mark.name}`)}
    />
  )
}
