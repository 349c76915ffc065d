// The circle of OKLCh hues laid out straight, in the colours that the degrees mean.

/** Lightness and chroma of the rail: hues are told apart, and nothing outshines the picture (our choice). */
const lightness = 0.7
const chroma = 0.09
const stops = Array.from({ length: 25 }, (_, i) => `oklch(${lightness} ${chroma} ${i * 15})`)

export function HueRail() {
  return <span className="hue-rail" style={{ background: `linear-gradient(to right, ${stops.join(', ')})` }} />
}
