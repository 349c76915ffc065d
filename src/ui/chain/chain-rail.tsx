// The chain as a rail: light enters from the sensor on the left, every step is a stop on it, the output is its end.
// A step that is switched off is passed by.
import { useRef, useState } from 'react'

import { AddStep } from './add-step.tsx'
import { ChainStop, moveHintId } from './chain-stop.tsx'
import { useScrollEdges } from './scroll-edges.ts'
import { mayStandAt, titleOf, useChain } from './selected-step.ts'
import { StepPatches } from '../readings/step-patches.tsx'
import { useWorkbench } from '../workbench-context.tsx'

export function ChainRail() {
  const workbench = useWorkbench()
  const chain = useChain()
  const line = useRef<HTMLElement>(null)
  useScrollEdges(line)
  const list = useRef<HTMLOListElement>(null)
  const [drag, setDrag] = useState<{ from: number; to: number } | null>(null)
  const [said, setSaid] = useState('')

  const move = (from: number, to: number) => {
    const step = chain[from]
    if (!mayStandAt(chain, step, to)) return
    workbench.moveStep(step.id, to)
    setSaid(`${titleOf(step)} is now step ${to + 1} of ${chain.length}.`)
  }
  const stopUnder = (clientX: number) => {
    const stops = [...(list.current?.querySelectorAll('[data-stop]') ?? [])]
    return stops.findIndex((stop) => clientX < stop.getBoundingClientRect().right)
  }
  const focusStop = (index: number) =>
    list.current?.querySelectorAll<HTMLElement>('[data-stop] .stop-name')[index]?.focus()

  const stops = chain.map((step, index) => (
    <ChainStop
      key={step.id}
      step={step}
      index={index}
      isCarried={drag?.from === index}
      dropSide={drag?.to === index ? (drag.to < drag.from ? 'before' : 'after') : null}
      onFocusStop={focusStop}
      onMove={(to) => move(index, to)}
      onDrag={(clientX) => {
        const to = stopUnder(clientX)
        setDrag(to !== index && mayStandAt(chain, step, to) ? { from: index, to } : null)
      }}
      onDrop={() => {
        if (drag) move(drag.from, drag.to)
        setDrag(null)
      }}
      onDragCancel={() => setDrag(null)}
    />
  ))

  return (
    <nav ref={line} className="chain" aria-label="Chain, from sensor to output">
      <ol ref={list} className="rail">
        <li className="rail-start">
          <span className="stop-lamp stop-bar" aria-hidden="true" />
          <span className="rail-end-name">Sensor</span>
          <StepPatches stepId={null} />
        </li>
        {stops.slice(0, -1)}
        <li className="rail-add">
          <AddStep />
        </li>
        {stops.at(-1)}
      </ol>
      <span id={moveHintId} hidden>
        Shift with left or right arrow moves this step
      </span>
      <output className="visually-hidden" aria-live="polite">
        {said}
      </output>
    </nav>
  )
}
