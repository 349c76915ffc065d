// The spread of levels as a quiet hill behind a plot; heights are square roots, as in the histograms.
import type { LevelSpread } from '../../analysis/level-spread.ts'

/** Parts of the axis (our choice). */
const bins = 68

interface LevelBackdropProps {
  readonly spread: LevelSpread | null
  /** A level's place on the axis, 0…1. */
  readonly toAxis: (level: number) => number
  /** Size of the plot in units of its drawing. */
  readonly width: number
  readonly height: number
}

export function LevelBackdrop({ spread, toAxis, width, height }: LevelBackdropProps) {
  if (!spread) return null
  const shares = spread.histogram(bins, toAxis)
  const most = Math.max(...shares, Number.MIN_VALUE)
  const at = (share: number, i: number) =>
    `${((i / (bins - 1)) * width).toFixed(1)} ${(height - Math.sqrt(share / most) * height * 0.86).toFixed(1)}`
  return <path className="level-hill" d={`M0 ${height}L${Array.from(shares, at).join('L')}L${width} ${height}Z`} />
}
