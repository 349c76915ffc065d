// What the selected step lays over the picture to be taken hold of there: by operation.
import { secondLight } from '../../operations/second-light.ts'
import { useSelectedStep } from '../chain/selected-step.ts'
import { BrushLayer } from './brush-layer.tsx'
import { GraduatedHandles } from './graduated-handles.tsx'

export function StepLayers() {
  const selected = useSelectedStep()
  if (!selected?.step.enabled) return null
  const { step, operation } = selected
  const isGraduated = operation.id === secondLight.id && step.values.way === 'graduated'
  return (
    <>
      {isGraduated && (
        <GraduatedHandles
          step={step}
          ends={step.values.ends as readonly number[]}
          controlKey="ends"
          labels={['Sun ends here', 'Shade begins here']}
        />
      )}
      <BrushLayer />
    </>
  )
}
