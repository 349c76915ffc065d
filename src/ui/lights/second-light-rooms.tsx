// What the second light shows beside its sliders: the two picks it stands on and what they say of the light, then the means to see
// and to correct where the shade lies.
import { useEffect } from 'react'

import { areTwoLights, isBeyondLight, lightDistance, lightMarkOf } from '../../analysis/two-lights/light-marks.ts'
import type { Step } from '../../edits/stack.ts'
import { formatNumber } from '../../text/format-number.ts'
import type { StepRoomProps } from '../panel/step-room-props.ts'
import { LightPickRow } from './light-pick-row.tsx'
import { endProbe } from '../picture/probe-tool.ts'
import { useWorkbench } from '../workbench-context.tsx'
import { ReachSwitch } from './reach-switch.tsx'
import { ShadeBrush } from './shade-brush.tsx'

const numbersOf = (step: Step, key: string) => (step.values[key] ?? []) as readonly number[]

const picksOf = (step: Step) => [lightMarkOf(numbersOf(step, 'sun')), lightMarkOf(numbersOf(step, 'shade'))] as const

/** What the picks say of each other, in one sentence. */
function verdict(step: Step): string {
  const [sun, shade] = picksOf(step)
  if (!sun || !shade) return 'Pick one kind of surface twice, lit and unlit: what parts the two is the light alone.'
  const apart = `${formatNumber(lightDistance(sun, shade), 2)} stop apart in colour`
  const darker = sun[2] - shade[2]
  if (areTwoLights(sun, shade) && isBeyondLight(sun, shade))
    return `${apart}: more than light alone does. The shade may be too dark to tell, or two kinds of surface were picked.`
  if (areTwoLights(sun, shade)) return `${apart}, ${formatNumber(darker, 1)} in level.`
  if (darker <= 0) return 'The pick in the shade is the brighter one: pick them the other way round.'
  return `Only ${apart}: one neutral serves both lights here, so no shade is looked for.`
}

/** Whether the step knows of a shade anywhere: drawn by hand, or found from two picks. */
function hasShade(step: Step): boolean {
  const [sun, shade] = picksOf(step)
  return step.values.way === 'graduated' || (sun !== null && shade !== null && areTwoLights(sun, shade))
}

/** A pick under way ends with the controls that it is for. */
function usePickEnds(stepId: string): void {
  const workbench = useWorkbench()
  useEffect(
    () => () => {
      if (workbench.session.getState().probeTarget?.stepId === stepId) endProbe(workbench)
    },
    [workbench, stepId],
  )
}

export function LightPicks({ step }: StepRoomProps) {
  usePickEnds(step.id)
  return (
    <div className="light-picks">
      <LightPickRow stepId={step.id} light="sun" pick={numbersOf(step, 'sun')} />
      <LightPickRow stepId={step.id} light="shade" pick={numbersOf(step, 'shade')} />
      <p className="control-note">{verdict(step)}</p>
    </div>
  )
}

export function ShadePlace({ step }: StepRoomProps) {
  if (!hasShade(step) && numbersOf(step, 'strokes').length === 0)
    return <p className="control-note">Once a shade is found or graduated, it can be shown and painted here.</p>
  return (
    <>
      <ReachSwitch stepId={step.id} label="Show the shade in the picture" />
      <ShadeBrush step={step} />
    </>
  )
}
