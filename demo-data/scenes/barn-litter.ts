// Small things on and beside the track: fallen leaves on mud and water, straws, grasses in seed, rosettes of broad leaves.
import type { Palette } from '../light/triplets.ts'
import { lightMix, scale } from '../paint/brush.ts'
import type { Camera } from '../paint/camera.ts'
import { addLeaf, createFoliage } from '../paint/foliage.ts'
import { createStream, hash } from '../paint/hash.ts'
import { growRosette, growSeedHead, growUmbel, herbKind } from '../paint/herbs.ts'
import { placeFoliage } from '../paint/place-foliage.ts'
import type { Strokes } from '../paint/strokes.ts'
import type { BarnGround } from './barn-ground.ts'
import { trackX } from './barn-ground.ts'

const fallen = 3
const cellM = 0.3
const farM = 19

export function scatterLitter(
  strokes: Strokes,
  camera: Camera,
  palette: Palette,
  seed: number,
  ground: BarnGround,
): void {
  const litter = createFoliage()
  for (let j = 5; j * cellM < farM; j++) {
    const half = Math.ceil((j * camera.centreX) / camera.focalPx) + 2
    for (let i = -half; i <= half; i++) {
      const next = createStream(hash(i, j, seed, 61))
      const x = (i + next()) * cellM
      const z = (j + next()) * cellM
      if (z < 1.6) continue
      const away = ground.fromTrack(x, z)
      const chance = next()
      const own = hash(i, j, seed, 63)
      if (away < 1.35 && chance < 0.2) {
        const a = next() * 6.283
        const m = 0.035 + 0.03 * next()
        const tilt = ground.waterAt(x, z) > 0 ? 0 : 0.35 * (next() - 0.5)
        addLeaf(
          litter,
          x,
          0.006,
          z,
          Math.cos(a) * m,
          tilt * m + 0.004,
          Math.sin(a) * m,
          0.3 * (next() - 0.5),
          1,
          -0.2,
          m * 0.36,
          2 * next() - 1,
          fallen,
        )
      } else if (away > 1.45 && chance < 0.33) growSeedHead(litter, x, 0.03, z, 0.55 + 0.45 * next(), 0.2, own)
      else if (away > 1.7 && chance < 0.36) growUmbel(litter, x, 0.03, z, 0.7 + 0.5 * next(), own)
      else if (away > 0.95 && away < 1.4 && chance < 0.3) growRosette(litter, x, 0, z, 0.03 + 0.04 * next(), own)
      else if (Math.abs(x - trackX(z)) < 0.3 && chance < 0.12) growRosette(litter, x, 0, z, 0.02 + 0.03 * next(), own)
    }
  }
  const lit = {
    leafSun: new Float32Array(litter.leafCount),
    leafSky: new Float32Array(litter.leafCount).fill(1),
    limbSun: new Float32Array(litter.limbCount),
    limbSky: new Float32Array(litter.limbCount).fill(0.8),
  }
  const leaf = palette.of('leaf')
  const dry = palette.of('dryGrass')
  const yellow = palette.of('yellowLeaf')
  const brown = palette.of('driedLeaf')
  placeFoliage(strokes, litter, lit, camera, [0, 1, 0], {
    leaf(part, brush) {
      if (part.kind === fallen) lightMix(brush, yellow, brown, part.tint > 0 ? 0.9 : 0.2, 0, 0, 0.85)
      else if (part.kind === herbKind.leaf) lightMix(brush, leaf, dry, 0.15, 0, 0, 0.7 * part.sky, 0.1)
      else lightMix(brush, dry, brown, part.kind === herbKind.flower ? 0.8 : 0.25, 0, 0, 0.9)
      scale(brush, 1 + 0.22 * part.tint)
    },
    limb(part, brush) {
      lightMix(brush, leaf, dry, 0.75, 0, 0, 0.75 * part.sky, 0.05)
    },
  })
}
