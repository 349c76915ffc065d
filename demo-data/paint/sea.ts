// The sea along a shore: swell that rears up into crests, breaks, and trails foam. Distances seaward of the water's edge in metres.
// Height and foam come from the same crests, so white water lies where the wave has broken.
import { fbm2, noise2 } from './noise.ts'
import { tabulate } from './tabulate.ts'

/** Crests by their mean distance from the edge, with height in metres. */
const crests = [
  { at: 4.2, heightM: 0.16 },
  { at: 10.5, heightM: 0.5 },
  { at: 19, heightM: 0.8 },
  { at: 31, heightM: 0.95 },
  { at: 46, heightM: 0.8 },
  { at: 66, heightM: 0.6 },
] as const
const outerM = 84

function smooth(from: number, to: number, v: number): number {
  const t = Math.min(1, Math.max(0, (v - from) / (to - from)))
  return t * t * (3 - 2 * t)
}

/** How far each crest is bent seaward, and how strongly it stands, along the shore. */
const shifts = crests.map((_, i) =>
  tabulate((along) => 2.6 * noise2(along / 21, i * 5.3, 331) + 0.8 * noise2(along / 5.5, i * 3.1, 332)),
)
const strengths = crests.map((_, i) =>
  tabulate((along) => smooth(-0.55, 0.4, noise2(along / 17 + i * 9.7, i * 2.2, 333) + 0.2)),
)

/** Height of the water `seawardM` off the edge at `along` metres along the shore; detail under `footprintM` is left out. */
export function seaHeight(seawardM: number, along: number, footprintM: number): number {
  let h = 0.1 * Math.min(1, Math.max(0, seawardM / 12)) * fbm2(seawardM / 3.1, along / 6.3, 3, 334, footprintM / 3)
  if (seawardM > 45) h += 0.35 * smooth(45, 100, seawardM) * fbm2(seawardM / 17, along / 46, 2, 335, footprintM / 17)
  if (seawardM > outerM) return h
  for (let i = 0; i < crests.length; i++) {
    const { at, heightM } = crests[i]
    const near = seawardM - at
    if (near < -6 || near > 10) continue
    const q = near - shifts[i](along)
    if (q < -1.6 || q > 6) continue
    const ragged = 1 + 0.4 * fbm2(along / 1.7, seawardM / 1.3, 4, 336 + i, footprintM / 1.5)
    h += heightM * strengths[i](along) * ragged * (q > 0 ? Math.exp(-q / 1.9) : Math.exp(-q * q * 3))
  }
  return h
}

/**
 * Thickness of foam for `foamAt`: fresh on breaking crests, ageing behind them, a rim where the water runs up the sand.
 * `edgeM` = distance from where the water ends.
 */
export function foamAge(seawardM: number, along: number, edgeM: number, footprintM: number): number {
  if (seawardM > outerM) return 0
  const broad = fbm2(seawardM / 2.4, along / 3.6, 3, 341, footprintM / 2.4)
  const fine = fbm2(seawardM / 0.45, along / 0.6, 4, 342, footprintM / 0.45)
  let age = 0
  for (let i = 0; i < crests.length; i++) {
    const near = seawardM - crests[i].at
    if (near < -8 || near > 18) continue
    const q = near - shifts[i](along)
    const s = strengths[i](along)
    const fresh = s * smooth(-1.5 + 0.35 * fine, -0.75 + 0.35 * fine, q) * Math.exp(-Math.max(0, q) / 1.1)
    const old = q > -0.6 ? (0.3 + 0.45 * s) * Math.exp(-Math.max(0, q) / 8) * (1 + 0.55 * broad) : 0
    age = Math.max(age, 1.25 * fresh, old)
  }
  const lobes = edgeM + 0.06 - 0.1 * fine
  const rim =
    lobes > -0.12
      ? smooth(-0.12, 0.02, lobes) *
        (0.9 * Math.exp(-Math.max(0, lobes) / 0.22) + 0.42 * Math.exp(-Math.max(0, lobes) / 1.6))
      : 0
  return Math.max(age, rim)
}
