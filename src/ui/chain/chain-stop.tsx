// One stop of the chain: its lamp switches the step, its name selects it, dragging the name or shift with an arrow moves it.
import { useEffect, useRef, type KeyboardEvent, type PointerEvent } from 'react'

import { isFree, isRemovable, type Step } from '../../edits/stack.ts'
import { operationOf, titleOf } from './selected-step.ts'
import { StepPatches } from '../readings/step-patches.tsx'
import { useSession, useWorkbench } from '../workbench-context.tsx'

/** CSS pixels of travel that make a press a drag (our choice). */
const dragFromPx = 6
/** Id of the words, somewhere on the page, that say how a step is moved by keys. */
export const moveHintId = 'move-hint'

interface ChainStopProps {
  readonly step: Step
  readonly index: number
  readonly isCarried: boolean
  readonly dropSide: 'before' | 'after' | null
  readonly onFocusStop: (index: number) => void
  readonly onMove: (toIndex: number) => void
  readonly onDrag: (clientX: number) => void
  readonly onDrop: () => void
  readonly onDragCancel: () => void
}

export function ChainStop(props: ChainStopProps) {
  const { step, index, isCarried, dropSide, onFocusStop, onMove, onDrag, onDrop, onDragCancel } = props
  const workbench = useWorkbench()
  const selected = useSession((session) => session.selectedStepId === step.id)
  const drag = useRef<{ fromX: number; moved: boolean } | null>(null)
  const movable = isFree(step)
  const stop = useRef<HTMLLIElement>(null)
  const isEnd = operationOf(step)?.place === 'output'
  const title = titleOf(step)

  useEffect(() => {
    if (!selected) return
    // With the next frame, which lays out the page anyway.
    const scheduled = requestAnimationFrame(() => stop.current?.scrollIntoView({ block: 'nearest', inline: 'nearest' }))
    return () => cancelAnimationFrame(scheduled)
  }, [selected])

  const press = (event: KeyboardEvent) => {
    const side = event.key === 'ArrowLeft' ? -1 : event.key === 'ArrowRight' ? 1 : 0
    if (event.key === 'Delete' && isRemovable(step)) workbench.removeStep(step.id)
    else if (event.key === 'Escape' && drag.current) stopDrag()
    else if (side === 0) return
    else if (event.shiftKey) onMove(index + side)
    else onFocusStop(index + side)
    event.preventDefault()
    event.stopPropagation()
  }
  const stopDrag = () => {
    drag.current = null
    onDragCancel()
  }
  const move = (event: PointerEvent) => {
    if (!drag.current || !movable) return
    drag.current.moved ||= Math.abs(event.clientX - drag.current.fromX) > dragFromPx
    if (drag.current.moved) onDrag(event.clientX)
  }

  return (
    <li
      ref={stop}
      className="stop"
      data-stop
      data-off={!step.enabled || undefined}
      data-selected={selected || undefined}
      data-carried={isCarried || undefined}
      data-drop={dropSide ?? undefined}
    >
      {isEnd ? (
        <span className="stop-lamp stop-bar" aria-hidden="true" />
      ) : (
        <button
          type="button"
          className="stop-lamp"
          role="switch"
          aria-checked={step.enabled}
          aria-label={`${title} acts`}
          onClick={() => workbench.setStepEnabled(step.id, !step.enabled)}
        />
      )}
      <button
        type="button"
        className="stop-name"
        aria-pressed={selected}
        aria-describedby={movable ? moveHintId : undefined}
        data-movable={movable || undefined}
        onClick={() => workbench.selectStep(step.id)}
        onPointerDown={(event) => {
          event.currentTarget.setPointerCapture(event.pointerId)
          drag.current = { fromX: event.clientX, moved: false }
        }}
        onPointerMove={move}
        onPointerUp={() => {
          if (drag.current?.moved) onDrop()
          drag.current = null
        }}
        onPointerCancel={stopDrag}
        onKeyDown={press}
      >
        {title}
        {!step.enabled && <span className="visually-hidden">, switched off</span>}
      </button>
      <StepPatches stepId={step.id} />
    </li>
  )
}
