// What stands above the meadow's grass: drifts of umbels, grasses in seed, rosettes beside the path.
import type { Palette } from '../light/triplets.ts'
import { light, lightMix, scale } from '../paint/brush.ts'
import type { Camera } from '../paint/camera.ts'
import { createFoliage, leafStride } from '../paint/foliage.ts'
import { hash, hashUnit } from '../paint/hash.ts'
import { growRosette, growSeedHead, growUmbel, herbKind } from '../paint/herbs.ts'
import { fbm2 } from '../paint/noise.ts'
import { placeFoliage } from '../paint/place-foliage.ts'
import type { Strokes } from '../paint/strokes.ts'
import type { Vector } from '../paint/vector.ts'
import type { MeadowGround } from './meadow-ground.ts'

const cellM = 0.42
const farM = 26

/** Grows the herbs and adds them to `strokes`. */
export function growMeadowHerbs(
  strokes: Strokes,
  camera: Camera,
  palette: Palette,
  seed: number,
  sun: Vector,
  ground: MeadowGround,
): void {
  const herbs = createFoliage()
  for (let j = 3; j * cellM < farM; j++) {
    const half = Math.ceil((j * cellM * camera.centreX) / camera.focalPx / cellM) + 2
    for (let i = -half; i <= half; i++) {
      const x = (i + hashUnit(i, j, seed, 1)) * cellM
      const z = (j + hashUnit(i, j, seed, 2)) * cellM
      if (z < 1.7) continue
      const path = ground.fromPath(x, z)
      const drift = fbm2(x / 3.2, z / 3.2, 2, seed + 51)
      const chance = hashUnit(i, j, seed, 3)
      const own = hash(i, j, seed, 4)
      if (path > 0.75 && chance < 0.9 * Math.max(0, drift - 0.02))
        growUmbel(herbs, x, 0, z, 0.7 + 0.45 * hashUnit(own), own)
      else if (path > 0.5 && chance < 0.62 - 0.5 * drift)
        growSeedHead(herbs, x, 0, z, 0.62 + 0.32 * hashUnit(own), 0.16 + 0.2 * drift, own)
      else if (path < 0.8 && path > 0.25 && chance < 0.75)
        growRosette(herbs, x, 0, z, 0.035 + 0.05 * hashUnit(own), own)
    }
  }
  const lit = {
    leafSun: new Float32Array(herbs.leafCount),
    leafSky: new Float32Array(herbs.leafCount).fill(0.85),
    limbSun: new Float32Array(herbs.limbCount).fill(0.8),
    limbSky: new Float32Array(herbs.limbCount).fill(0.7),
  }
  for (let i = 0; i < herbs.leafCount; i++)
    lit.leafSun[i] = ground.sunAt(herbs.leaves[i * leafStride], herbs.leaves[i * leafStride + 2])
  const leaf = palette.of('leaf')
  const dry = palette.of('dryGrass')
  const flower = palette.of('cotton')
  placeFoliage(strokes, herbs, lit, camera, sun, {
    leaf(part, brush) {
      if (part.kind === herbKind.flower) light(brush, flower, 0.25 + 0.75 * part.sun, part.sky)
      else if (part.kind === herbKind.seed) light(brush, dry, 0.2 + 1.1 * part.sun, part.sky, 0, 0.3)
      else light(brush, leaf, part.sun, part.sky * 0.7, 0, 0.2)
      scale(brush, 1 + 0.25 * part.tint)
    },
    limb(part, brush) {
      lightMix(brush, leaf, dry, 0.6, 0.5, part.sky, 0, 0.2)
    },
  })
}
