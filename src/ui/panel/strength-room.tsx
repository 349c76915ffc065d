// What the frame's noise allows colour strength, at its mean level and in its shadows.
import { colourStrength, strengthLimit } from '../../operations/colour-strength.ts'
import { meanLevel, openingNeutral } from '../../operations/neutral.ts'
import { describe } from '../../pipeline/describe.ts'
import { useChain } from '../chain/selected-step.ts'
import { useSession } from '../workbench-context.tsx'
import type { StepRoomProps } from './step-room-props.ts'

/** How far below the mean the note looks into the shadows, in stops (our choice). */
const shadowStops = 4

/** e.g. 6.24 → "6.2", 14.3 → "14". */
const factorText = (factor: number) => (factor < 9.95 ? factor.toFixed(1) : String(Math.round(factor)))

export function StrengthRoom({ step }: StepRoomProps) {
  const chain = useChain()
  const facts = useSession((session) => session.shown?.facts)
  if (!facts || !step.enabled) return null
  const described = describe(chain, facts).steps.find(({ stepId }) => stepId === step.id)
  if (!described) return null
  const k = described.coefficients as ReturnType<typeof colourStrength.derive>
  const level = meanLevel(facts, ...openingNeutral(facts))
  const [mean, shadow] = [level, level / 2 ** shadowStops].map((at) => factorText(strengthLimit(k, at)))
  return (
    <p className="control-note">
      Asked for: colours × {factorText(k.strength)}. The noise of a single pixel allows × {mean} at the frame’s mean
      level and × {shadow} in shadows {shadowStops} stops below it; towards these limits growth bends off.
    </p>
  )
}
