// What the selected step lays over the picture to be taken hold of there: by operation.
import type { Step } from '../../edits/stack.ts'
import { secondLight } from '../../operations/second-light.ts'
import { useSelectedStep } from '../chain/selected-step.ts'
import { useGesture } from '../controls/gesture.ts'
import { PartHandles } from '../places/part-handles.tsx'
import { useSession } from '../workbench-context.tsx'
import { BrushLayer } from './brush-layer.tsx'
import { GraduatedHandles } from './graduated-handles.tsx'

function ShadeEnds({ step }: { step: Step }) {
  const gesture = useGesture(step.id, 'ends', 'Graduated passage')
  return (
    <GraduatedHandles
      ends={step.values.ends as readonly number[]}
      gesture={gesture}
      labels={['Sun ends here', 'Shade begins here']}
    />
  )
}

export function StepLayers() {
  const selected = useSelectedStep()
  const isBrushOut = useSession((session) => session.tool === 'brush')
  if (!selected?.step.enabled) return null
  const { step, operation } = selected
  const isGraduated = operation.id === secondLight.id && step.values.way === 'graduated'
  return (
    <>
      {isGraduated && <ShadeEnds step={step} />}
      <PartHandles step={step} />
      {isBrushOut && operation.id === secondLight.id && <BrushLayer key={step.id} step={step} />}
    </>
  )
}
