// CIEDE2000 colour difference of two CIELAB colours, with all weights 1. Sharma, Wu & Dalal, Color Research & Application 30 (2005).

type Lab = readonly [lightness: number, a: number, b: number]

const radians = (degrees: number) => (degrees * Math.PI) / 180
/** c⁷ / (c⁷ + 25⁷) under a root: how much a chroma counts as large. */
const largeChroma = (c: number) => Math.sqrt(c ** 7 / (c ** 7 + 25 ** 7))

function hueDeg(a: number, b: number): number {
  const degrees = (Math.atan2(b, a) * 180) / Math.PI
  return degrees < 0 ? degrees + 360 : degrees
}

/** ΔE00 between two CIELAB colours; 1 is about the least difference seen side by side. */
export function ciede2000([l1, a1, b1]: Lab, [l2, a2, b2]: Lab): number {
  const stretch = 1 + 0.5 * (1 - largeChroma((Math.hypot(a1, b1) + Math.hypot(a2, b2)) / 2))
  const [c1, c2] = [Math.hypot(stretch * a1, b1), Math.hypot(stretch * a2, b2)]
  const [h1, h2] = [hueDeg(stretch * a1, b1), hueDeg(stretch * a2, b2)]
  const isGrey = c1 * c2 === 0
  const turn = h2 - h1
  const hueDifference = isGrey ? 0 : turn > 180 ? turn - 360 : turn < -180 ? turn + 360 : turn
  const hueSum = h1 + h2
  const meanHue = isGrey
    ? hueSum
    : Math.abs(turn) <= 180
      ? hueSum / 2
      : hueSum < 360
        ? (hueSum + 360) / 2
        : (hueSum - 360) / 2
  const [meanL, meanC] = [(l1 + l2) / 2, (c1 + c2) / 2]

  const t =
    1 -
    0.17 * Math.cos(radians(meanHue - 30)) +
    0.24 * Math.cos(radians(2 * meanHue)) +
    0.32 * Math.cos(radians(3 * meanHue + 6)) -
    0.2 * Math.cos(radians(4 * meanHue - 63))
  const fromMiddle = (meanL - 50) ** 2
  const lightness = (l2 - l1) / (1 + (0.015 * fromMiddle) / Math.sqrt(20 + fromMiddle))
  const chroma = (c2 - c1) / (1 + 0.045 * meanC)
  const hue = (2 * Math.sqrt(c1 * c2) * Math.sin(radians(hueDifference / 2))) / (1 + 0.015 * meanC * t)
  const blueTurn = radians(30 * Math.exp(-(((meanHue - 275) / 25) ** 2)))
  const crossing = -Math.sin(2 * blueTurn) * 2 * largeChroma(meanC)
  return Math.sqrt(lightness ** 2 + chroma ** 2 + hue ** 2 + crossing * chroma * hue)
}
