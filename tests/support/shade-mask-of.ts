// The mask of a frame in one go: judged, then corrected.
import { correctShade, judgeShade, type ShadeRequest } from '../../src/analysis/two-lights/shade-mask.ts'
import type { Stroke } from '../../src/analysis/two-lights/strokes.ts'

/** Null where the marks do not tell two lights apart. */
export function shadeMaskOf(request: ShadeRequest, strokes: readonly Stroke[] = []) {
  const judged = judgeShade(request)
  return judged && correctShade(judged, strokes)
}
