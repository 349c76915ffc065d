// Spray thrown up where a wave hits rock: droplets caught at chance moments of their parabolas, few large, many fine.
// Jets leave at their own angles, because an even cloud of drops would read as smoke.
import type { Palette } from '../light/triplets.ts'
import { createBrush, light } from './brush.ts'
import { type Camera, columnOf, rowOf } from './camera.ts'
import type { Band } from './canvas.ts'
import { createStream } from './hash.ts'
import { drawDisc } from './shapes.ts'

export interface Burst {
  readonly x: number
  readonly z: number
  /** How high the highest drops rise, metres. */
  readonly heightM: number
  readonly drops: number
}

/** Paints bursts of sunlit drops over what the band holds, far to near as listed. */
export function paintSpray(band: Band, camera: Camera, palette: Palette, bursts: readonly Burst[], seed: number): void {
  const brush = createBrush()
  light(brush, palette.of('cloud'), 0.8, 0.8)
  for (let b = 0; b < bursts.length; b++) {
    const { x, z, heightM, drops } = bursts[b]
    const next = createStream(seed + b * 977)
    const jets = Array.from({ length: 9 }, () => ({
      lean: (next() - 0.5) * 1.1,
      reach: 0.25 + 0.75 * next() ** 1.5,
      foot: next() - 0.5,
    }))
    const perM = camera.focalPx / z
    for (let i = 0; i < drops; i++) {
      const jet = jets[Math.floor(next() * jets.length)]
      const lift = jet.reach * (0.35 + 0.65 * next())
      const when = next() ** 0.8 * 1.7
      const y = heightM * lift * when * (2 - when)
      const side = heightM * (jet.foot * 0.9 + (jet.lean + (next() - 0.5) * 0.35) * lift * when + 0.08 * when * when)
      const size = next()
      const mist = size < 0.3
      const radiusM = mist ? heightM * 0.05 * (0.5 + next()) : 0.004 + 0.02 * ((size - 0.3) / 0.7) ** 5
      drawDisc(band, columnOf(camera, x + side, z), rowOf(camera, y, z), radiusM * perM, mist ? 0.035 : 0.8, brush)
    }
  }
}
