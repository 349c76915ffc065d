// What a level between sun and shade says of colour: the level tells the share of sun that is left, and the share the colour.
// Both lights add up linearly, so colour stays near that of sun until little sun is left and then turns quickly.
import type { LightMark } from './light-marks.ts'

/** Linear red, green and blue of a mark. */
function linear([u, v, log2Red]: LightMark): [number, number, number] {
  const red = 2 ** log2Red
  const green = red / 2 ** u
  return [red, green, green * 2 ** v]
}

/** Way of the colour from sun (0) to shade (1), by the way of the level, both in stops; straight on beyond the ends. */
export function colourOfLevel(sun: LightMark, shade: LightMark): (levelWay: number) => number {
  const [inSun, inShade] = [linear(sun), linear(shade)]
  const [du, dv] = [shade[0] - sun[0], shade[1] - sun[1]]
  const shadeLevel = inShade[0] / inSun[0]
  return (levelWay) => {
    if (levelWay <= 0 || levelWay >= 1) return levelWay
    const share = (shadeLevel ** levelWay - shadeLevel) / (1 - shadeLevel)
    const [red, green, blue] = inSun.map((value, c) => share * value + (1 - share) * inShade[c])
    const [u, v] = [Math.log2(red / green) - sun[0], Math.log2(blue / green) - sun[1]]
    return (u * du + v * dv) / (du * du + dv * dv)
  }
}
