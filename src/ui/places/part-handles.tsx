// What the open place of a step lays over the picture to be taken hold of.
import { useStore } from 'zustand'

import type { Step } from '../../edits/stack.ts'
import { GraduatedHandles } from '../lights/graduated-handles.tsx'
import { maskOf, useMaskGesture, withPart } from './mask-gesture.ts'
import { PartPickLayer } from './part-pick-layer.tsx'
import { placesTool } from './places-tool.ts'
import { RadialHandles } from './radial-handles.tsx'
import { useSession } from '../workbench-context.tsx'

function GraduatedPart({ step, index }: { step: Step; index: number }) {
  const mask = maskOf(step)
  const { values } = mask.parts[index]
  const gesture = useMaskGesture(step.id, 'Graduated area', (ends) =>
    withPart(mask, index, { values: { ...values, ends } }),
  )
  return (
    <GraduatedHandles
      ends={values.ends as readonly number[]}
      gesture={gesture}
      labels={['Acts fully up to here', 'Acts no more from here']}
    />
  )
}

export function PartHandles({ step }: { step: Step }) {
  const { stepId, open } = useStore(placesTool)
  const picking = useSession((session) => session.tool === 'place pick')
  const part = stepId === step.id && open !== null ? maskOf(step).parts[open] : undefined
  if (!part || open === null) return null
  return (
    <>
      {part.kind === 'radial' && <RadialHandles step={step} index={open} />}
      {part.kind === 'graduated' && <GraduatedPart step={step} index={open} />}
      {picking && <PartPickLayer key={open} step={step} index={open} />}
    </>
  )
}
