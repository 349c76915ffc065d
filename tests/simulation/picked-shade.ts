// Two picks put into a chain as the page does it, and the gains that the chain then gives every cell of a photograph.
import { addStep, neutralGains } from '../../src/edits/stack.ts'
import { withLightPick } from '../../src/edits/light-picks.ts'
import { findOpeningNeutral } from '../../src/frame/opening-neutral.ts'
import { clippingLevel } from '../../src/frame/cell-grid.ts'
import type { LinearData, Overview } from '../../src/frame/frame.ts'
import { samplePatch } from '../../src/frame/sample-patch.ts'
import { secondLight, shadePlane } from '../../src/operations/second-light.ts'
import { readValues } from '../../src/operations/values.ts'
import { suppliesOf } from '../../src/pipeline/planes-of-chain.ts'
import type { Rgb } from './camera.ts'
import type { Photograph } from './scene.ts'

export interface LightPick {
  readonly rgb: readonly number[]
  /** 0…1 of the frame. */
  readonly place: { readonly x: number; readonly y: number }
}

export interface PickedShade {
  /** How far each cell lies in shade, 0…1, row by row. */
  readonly shade: Float32Array
  /** Gains in stops relative to green in the sun, and what the shade adds to them. */
  readonly inSun: readonly [red: number, blue: number]
  readonly added: readonly [red: number, blue: number]
}

/** The shade of a photograph whose cells hold one photosite of red each; where the picks do not tell two lights apart nothing lies in it, as on the page. */
export function pickShade(
  { overview, grid, noise }: Pick<Photograph, 'overview' | 'grid' | 'noise'>,
  sun: LightPick,
  shade: LightPick,
): PickedShade {
  const bare = addStep(addStep([], 'neutral'), secondLight.id)
  const stepId = bare.find(({ operation }) => operation === secondLight.id)!.id
  const withSun = withLightPick(bare, { stepId, light: 'sun' }, sun.rgb, sun.place)
  const chain = withLightPick(withSun, { stepId, light: 'shade' }, shade.rgb, shade.place)
  const referenceNeutral = findOpeningNeutral(grid, [1, 1, 1])
  const supplies = suppliesOf(chain, { overview, noise, referenceNeutral, photosites: grid.photosites })
  const plane = supplies[shadePlane(stepId)]
  const step = chain.find(({ id }) => id === stepId)!
  const { redStops, blueStops } = readValues(secondLight, step.values, step.version)
  const neutral = neutralGains(chain)!
  return {
    shade: plane?.data ?? new Float32Array(overview.width * overview.height),
    inSun: [neutral.redStops, neutral.blueStops],
    added: [redStops, blueStops],
  }
}

/** Codes of black and white in which a photograph's cells are read again: fine beside their noise. */
const black = 2000
const white = 62_000

/** The cells as a sensor that the probe can read. */
function readable({ width, height, rgba }: Overview): LinearData {
  const codes = new Uint16Array(width * height * 3)
  for (let i = 0; i < codes.length; i++) {
    const at = Math.floor(i / 3) * 4
    const value = rgba[at + 3] >= clippingLevel ? 1 : rgba[at + (i % 3)]
    codes[i] = Math.min(Math.max(Math.round(black + value * (white - black)), 0), white)
  }
  return { kind: 'linear', width, height, codes, black: [black, black, black], white }
}

/** What the probe reads of a photograph with its noise, in a disc of some cells about a place; null where it calls that worse than fair. */
export function probePick(
  { overview, noise }: Pick<Photograph, 'overview' | 'noise'>,
  place: LightPick['place'],
  radiusCells: number,
): LightPick | null {
  const { meanCameraRgb, reliability } = samplePatch(readable(overview), noise, [place.x, place.y], radiusCells)
  return meanCameraRgb && (reliability === 'good' || reliability === 'fair') ? { rgb: meanCameraRgb, place } : null
}

/** Distance in stops of a cell's gains from those that make a colour grey. */
export function gainError({ shade, inSun, added }: PickedShade, cell: number, [red, green, blue]: Rgb): number {
  const [redGain, blueGain] = inSun.map((gain, i) => gain + shade[cell] * added[i])
  return Math.hypot(redGain + Math.log2(red / green), blueGain + Math.log2(blue / green))
}
