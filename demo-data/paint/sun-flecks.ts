// Flecks of sun in a tree's shade. A map of leaf area gives the mean share of sun behind a crown; through its gaps the sun
// draws round images of itself, so the ground shows light and dark in patches. As leaves clump, more light comes through than
// evenly spread ones would let pass; under dense crowns the flecks are brighter still.
import { noise2 } from './noise.ts'

/** Leaves of trees stand in clumps, which let light pass as if there were only this share of them (tuned by eye). */
const clumping = 0.38
/** Spread of the sum of noises below, as of a normal distribution (measured). */
const spread = 0.28
const softness = 0.16

/** Share of direct sun at X, Z on the ground where `mean` reaches through leaves if these were spread evenly. */
export function sunFleck(mean: number, x: number, z: number, seed: number): number {
  if (mean > 0.995) return mean
  const open = mean ** clumping
  if (open < 0.004) return open
  const pattern =
    0.62 * noise2(x / 0.24, z / 0.2, seed) +
    0.5 * noise2(x / 0.11, z / 0.09, seed + 1) +
    0.35 * noise2(x / 0.9, z / 0.9, seed + 2)
  // The logistic function stands in for the normal distribution's.
  const threshold = spread * 0.6 * Math.log((1 - open) / open)
  const t = Math.min(1, Math.max(0, (pattern - threshold) / (2 * softness) + 0.5))
  return t * t * (3 - 2 * t)
}
