// Foliage and sky, told by how red they are against the frame's grey behind its filter. Pixels cannot tell, they are noise; the
// plane that is read is smoothed along edges.
import { smoothstep } from '../../math/smoothstep.ts'
import { slider } from '../controls.ts'
import { defineMaskKind, heldEnd, type PartNumbers } from './mask-kind.ts'

/**
 * Where foliage begins and sky does behind 590 nm, in stops against grey: green foliage measures −.64…−1.29 there, bark, wood and
 * stone −.48…0, clear sky +.39…+.62 (computed from open spectra). Haze and thin cloud bring sky nearer to grey, and shade carries
 * grey towards sky; the plane lifts the one and leaves out the other where it is uneven.
 */
const foliageBorder = -0.5
const skyBorder = 0.16

/** Softness below which a border counts as hard, so that both engines divide by something. */
const hardest = 0.01

const softness = slider('Softness', 'stop', hardest, 1, 0.01, 0.2, { bounded: true })

const border = ({ borderStops, softness: soft }: { borderStops: number; softness: number }): PartNumbers => {
  const middle = heldEnd(borderStops)
  return [middle - soft / 2, middle + soft / 2, 0, 0, 0, 0]
}

export const foliage = defineMaskKind({
  id: 'foliage',
  title: 'Foliage',
  version: 1,
  controls: { borderStops: slider('Redder than grey, at most', 'stop', -1.5, 0.5, 0.01, foliageBorder), softness },
  readsMaterial: true,
  derive: border,
  weight: (_pixel, material, k) => 1 - smoothstep(k[0], k[1], material),
})

export const sky = defineMaskKind({
  id: 'sky',
  title: 'Sky',
  version: 1,
  controls: { borderStops: slider('Redder than grey, at least', 'stop', -0.5, 1.5, 0.01, skyBorder), softness },
  readsMaterial: true,
  derive: border,
  weight: (_pixel, material, k) => smoothstep(k[0], k[1], material),
})
