// How far a colour bulges from the straight line between the frame's foliage end and its sky end. Foliage, sky and what lies
// between them in light string along that line; flat grey lies to one side of it, by about a tenth of its length at 590 nm
// and a thirtieth at 720 nm, for both sensors that we have spectra of.
import type { Mode } from './modes.ts'

/** Shortest line in stops that has a direction beyond noise (our choice). */
const shortestLine = 0.05

/** Distance of a mode to that side of the line through the extreme modes, in lengths of the line. */
export function measureBulge(modes: readonly Mode[]): (mode: Mode) => number {
  const p = ({ u, v }: Mode) => u - v
  if (modes.length === 0) return () => 0
  const foliageEnd = modes.reduce((a, b) => (p(b) < p(a) ? b : a))
  const skyEnd = modes.reduce((a, b) => (p(b) > p(a) ? b : a))
  const [du, dv] = [skyEnd.u - foliageEnd.u, skyEnd.v - foliageEnd.v]
  const squared = du * du + dv * dv
  if (squared < shortestLine ** 2) return () => 0
  return ({ u, v }) => (du * (v - foliageEnd.v) - dv * (u - foliageEnd.u)) / squared
}
