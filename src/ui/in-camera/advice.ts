// What to fill the frame with, in words, by filter and light. Rules of the trade (common practice, no source) where no number
// decides: near 720 nm foliage makes the better picture, under cloud something near white is safer than anything that grew.
import { formatNumber } from '../../text/format-number.ts'
import { atCutOn, colourlessFromNm, greySunToShade } from './subjects.ts'

export type Light = 'sun' | 'overcast' | 'shade'

/** From this cut-on on, foliage lies so near to grey that it may be chosen for the look it gives. */
const foliageFromNm = 695

/** What to fill the frame with; `filterNm` null is full spectrum. */
export function whatToFrame(filterNm: number | null, light: Light): string {
  const place = { sun: 'in full sun', overcast: 'under the open sky', shade: 'in the same shade as your subject' }[
    light
  ]
  if (filterNm === null)
    return `A white or grey surface ${place}, as you would without the conversion. What is left is mostly a cast between green and magenta, and is best taken out afterwards.`
  if (filterNm >= colourlessFromNm)
    return `Anything evenly lit ${place} and not too dark. Hardly any colour is left behind this filter: the neutral only shifts how bright the channels are, and the picture is usually finished in black and white.`
  if (light === 'overcast')
    return 'Something near to white: white paint, pale stone, concrete. Under cloud it is safer than grass or leaves, which drift with every change of the sky.'
  if (filterNm >= foliageFromNm)
    return `Grass or leaves ${place} for white foliage and the bluest sky this filter can give; pale stone or concrete for a plainer picture with pale golden foliage.`
  return `Concrete, white cloth or paint, or pale stone ${place}. They lie nearest to grey; grass or leaves would push the whole picture towards their opposite.`
}

/** When to set it again. */
export function whenAgain(filterNm: number | null, light: Light): string {
  if (filterNm === null || filterNm >= colourlessFromNm) return 'One setting serves for the day.'
  const stops = formatNumber(atCutOn(greySunToShade, filterNm), 2)
  return light === 'overcast'
    ? `A grey under cloud reads as in sun; in open shade under a blue sky it lies ${stops} stop off. Set it again there.`
    : `From sun to open shade a grey moves by ${stops} stop behind this filter. Set it again when your subject changes sides: the lit and the shaded side of one thing are two neutrals.`
}
