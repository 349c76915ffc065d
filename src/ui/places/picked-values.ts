// What a place that is pointed at makes of a part: the hue or level there becomes the middle, a material becomes what is told apart.
import { oklabToOklch, workingToOklab } from '../../colour/oklab.ts'
import type { MaskPart } from '../../operations/masks/mask.ts'
import type { Values } from '../../operations/values.ts'

/** Half the range of levels about a picked one, in EV; the softness beside it (our choice). */
const levelReachEv = 1
/** Colours nearer to grey than this chroma over lightness have no hue to pick. */
const greyBelow = 0.005
/** A material picked nearer to grey than this many stops is not told from it. */
const greyWithinStops = 0.02
/** Mid grey, 18 % reflectance; common practice, no source. */
const midGrey = 0.18

interface Picked {
  /** Linear `workingRgb` as it comes into the step; null where clipped or too dark. */
  readonly colour: readonly [number, number, number] | null
  /** log2 R/B against grey in stops; null while the frame's materials are not known. */
  readonly materialStops: number | null
}

/** New values, or a sentence on why there are none. */
export function pickedValues({ kind, values }: MaskPart, { colour, materialStops }: Picked): Values | string {
  if (kind === 'foliage' || kind === 'sky') {
    if (materialStops === null) return 'The materials of this frame are still being told apart.'
    const side = kind === 'foliage' ? -1 : 1
    const away = side * materialStops
    if (away < greyWithinStops)
      return side < 0 ? 'This is not bluer than grey.' : 'This is not redder than grey, or too uneven for sky.'
    // Halfway to grey, and soft over half of that way.
    const softness = Math.max(Math.round(away * 50) / 100, 0.01)
    return { ...values, borderStops: side * (Math.round(away * 50) / 100), softness }
  }
  if (!colour) return 'Clipped or too dark to tell.'
  if (kind === 'level') {
    const ev = Math.log2(Math.max((colour[0] + colour[1] + colour[2]) / 3, 1e-6) / midGrey)
    const middle = Math.round(ev * 20) / 20
    return { ...values, fromEv: middle - levelReachEv, toEv: middle + levelReachEv }
  }
  const [lightness, chroma, hueDeg] = oklabToOklch(workingToOklab(colour))
  if (!(chroma > greyBelow * lightness)) return 'Too near to grey to have a hue.'
  return { ...values, hueDeg: Math.round(hueDeg > 180 ? hueDeg - 360 : hueDeg) }
}

export const isPickable = ({ kind }: MaskPart) => ['foliage', 'sky', 'level', 'hue'].includes(kind)
