// The two picks of a second light put into a chain: the one in sun is the frame's neutral too, and their difference is what the
// shade is turned by. Pure.
import { secondLight } from '../operations/second-light.ts'
import type { Chain } from '../operations/step.ts'
import { readValues } from '../operations/values.ts'
import { type Probe, setEnabled, setValues, withProbe } from './stack.ts'

export type PickedLight = 'sun' | 'shade'

/** What a probe is for: the neutral of the frame where null, else one of the two picks of a second light. */
export interface LightTarget {
  readonly stepId: string
  readonly light: PickedLight
}

/** The chain while the probe roams: the whole frame under its neutral, without the second light that it picks for. */
export function chainUnderProbe(chain: Chain, neutral: Probe, target: LightTarget | null): Chain {
  const isThere = target !== null && chain.some((step) => step.id === target.stepId)
  return withProbe(isThere ? setEnabled(chain, target.stepId, false) : chain, neutral)
}

/** The numbers a step keeps of a pick: where it was, log2 R/G, log2 B/G and log2 of red of `cameraRgb`. */
function pickNumbers([red, green, blue]: readonly number[], place: { readonly x: number; readonly y: number }) {
  return [place.x, place.y, Math.log2(red / green), Math.log2(blue / green), Math.log2(red)]
}

/** The chain with a pick of mean `cameraRgb`, all above 0. Throws a RangeError where the step is not there. */
export function withLightPick(
  chain: Chain,
  { stepId, light }: LightTarget,
  cameraRgb: readonly number[],
  place: { readonly x: number; readonly y: number },
): Chain {
  const pick = pickNumbers(cameraRgb, place)
  const picked = setValues(setEnabled(chain, stepId, true), stepId, { [light]: pick })
  const { sun, shade } = readValues(secondLight, picked.find((step) => step.id === stepId)?.values ?? {})
  const isPair = sun.length === pick.length && shade.length === pick.length
  const difference = { redStops: sun[2] - shade[2], blueStops: sun[3] - shade[3] }
  const turned = isPair ? setValues(picked, stepId, difference) : picked
  return light === 'sun' ? withProbe(turned, { redStops: -pick[2], blueStops: -pick[3] }) : turned
}
