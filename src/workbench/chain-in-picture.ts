// Which chain the picture shows: the probe's, else the one that is pointed at, else the frame's own. What tells of the picture
// in numbers follows the same rule, so that it never speaks of another picture than the one seen.
import { chainUnderProbe } from '../edits/light-picks.ts'
import type { Chain } from '../edits/stack.ts'
import type { Session } from './session.ts'

export function chainInPicture(
  own: Chain,
  { probe, probeTarget, preview }: Pick<Session, 'probe' | 'probeTarget' | 'preview'>,
): { readonly chain: Chain; /** Whether it goes when the pointer leaves. */ readonly isPassing: boolean } {
  const chain = probe?.neutral ? chainUnderProbe(own, probe.neutral, probeTarget) : (preview ?? own)
  return { chain, isPassing: probe !== null || preview !== null }
}
