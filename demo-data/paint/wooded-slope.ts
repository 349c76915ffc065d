// Colour of distant land: crowns with lit flanks and dark gaps where there is wood, pasture in clearings, grass and bare rock
// on the heights. Ground truth: `leaf`, `conifer`, `grass`, `dryGrass`, `rock`.
import type { Palette } from '../light/triplets.ts'
import { type Brush, light, lightMix, scale } from './brush.ts'
import type { Camera } from './camera.ts'
import type { Crown } from './canopy.ts'
import type { Landscape } from './landscape.ts'
import type { Shade } from './paint-landscape.ts'
import { type Cells, cells2, fbm2, noise2 } from './noise.ts'
import type { SunShadow } from './sun-shadow.ts'

export interface WoodedLand extends Landscape {
  /** The crown met by the last call of `height`. */
  readonly crown: Crown
  /** Height without trees, m. */
  ground(x: number, z: number, footprintM: number): number
  /** Difference between stands of trees, about −1…1. */
  stand(x: number, z: number): number
  /** Below this height the bank is stony, m. */
  readonly bankM: number
  /** Bare rock takes over at this height, snow on flat ground at that, m. */
  readonly rockFromM: number
  readonly snowFromM: number
  readonly seed: number
}

/** Returns the shader for `paintLandscape`. */
export function createWoodedShader(
  palette: Palette,
  camera: Camera,
  land: WoodedLand,
  sun: readonly [number, number, number],
  shadow: SunShadow,
): Shade {
  const leaf = palette.of('leaf')
  const maple = palette.of('mapleLeaf')
  const cells: Cells = { f1: 0, f2: 0, id: 0 }
  const pine = palette.of('pine')
  const grass = palette.of('grass')
  const dry = palette.of('dryGrass')
  const rock = palette.of('concrete')
  const cloud = palette.of('cloud')
  const stone = palette.of('rock')
  const scree = palette.of('limestone')

  const open = (x: number, z: number, y: number, steep: number, lit: number, brush: Brush) => {
    const fp = z / camera.focalPx
    const patch = fbm2(x / 60, z / 60, 5, land.seed, (4 * fp) / 60)
    const bare = Math.min(1, Math.max(0, (y - land.rockFromM) / 260 + 1.2 * (steep - 0.8) + 0.4 * patch))
    if (bare < 0.5) lightMix(brush, grass, dry, Math.min(1, Math.max(0, 0.35 + 0.5 * patch + bare)), lit, 0.85)
    else lightMix(brush, scree, rock, Math.min(1, Math.max(0, 2 * steep - 0.6 + patch)), lit, 0.85)
    const snow = (y - land.snowFromM) / 220 - 1.1 * steep + 0.9 * patch + 0.5
    if (snow > 0) lightMix(brush, rock, cloud, Math.min(0.85, snow * 3), lit, 0.85)
    const grain = bare > 0.5 ? 0.25 * noise2(x / 9, y / 7, land.seed + 4) : 0.3 * noise2(x / 2.2, z / 5, land.seed + 4)
    const wet = y < land.bankM ? 1 - y / land.bankM : 0
    if (wet > 0)
      lightMix(brush, grass, stone, Math.min(1, 2 * wet + 0.5 * noise2(x / 3, 0.5, land.seed + 5)), 0.6 * lit, 0.7)
    scale(brush, (1 + 0.14 * patch + grain / (1 + fp)) * (1 + 0.5 * wet * noise2(x / 0.9, y / 0.2, land.seed + 6)))
  }

  return (x, z, brush) => {
    const fp = z / camera.focalPx
    const y = land.height(x, z, fp)
    const { heightM, rise, conifer, chance } = land.crown
    const wooded = heightM > 0.4
    const e = wooded ? Math.max(0.5, fp) : Math.max(2, fp)
    const sx = (land.height(x + e, z, fp) - land.height(x - e, z, fp)) / (2 * e)
    const sz = (y - land.height(x, z - e, fp)) / e
    const n = 1 / Math.sqrt(1 + sx * sx + sz * sz)
    const facing = Math.max(0, (sun[1] - sx * sun[0] - sz * sun[2]) * n)
    const seen = shadow.share(x, y + 0.3, z)
    if (!wooded) {
      const dx = (land.ground(x + e, z, fp) - land.ground(x - e, z, fp)) / (2 * e)
      const dz = (land.ground(x, z + e, fp) - land.ground(x, z - e, fp)) / (2 * e)
      const steep = Math.sqrt(dx * dx + dz * dz)
      const bright = Math.max(0, sun[1] - dx * sun[0] - dz * sun[2]) / Math.sqrt(1 + steep * steep)
      open(x, z, y, steep, bright * seen, brush)
      return
    }
    const ground = y - heightM
    const gx = (land.ground(x + 12, z, fp) - ground) / 12
    const gz = (land.ground(x, z + 12, fp) - ground) / 12
    const slope = Math.max(0, (sun[1] - gx * sun[0] - gz * sun[2]) / Math.sqrt(1 + gx * gx + gz * gz))
    const far = Math.min(1, fp / 1.2)
    const deep = Math.min(1, rise * 1.5)
    let leaves = 0
    if (fp < 0.5) {
      cells2(x / 0.75, (y * 1.3 - z * 0.6) / 0.75, land.seed + 7, cells)
      leaves = (1 - 2 * fp) * (((cells.id & 255) / 255) * 1.1 - 0.3 - 0.55 * cells.f1)
    }
    const gap = deep + (1 - deep) * (0.2 + 0.3 * far)
    const lit = (0.1 + 0.55 * facing + 0.5 * slope) * (0.15 + 0.85 * seen) * gap * (1 + 0.7 * leaves)
    const sky = (0.1 + 0.7 * gap) * (1 + 0.3 * leaves)
    if (conifer) light(brush, pine, 0.62 * lit, 0.6 * sky, 0, 0.02 + 0.06 * deep)
    else lightMix(brush, leaf, maple, chance, lit, sky, 0, 0.03 + 0.16 * deep)
    scale(brush, (0.86 + 0.2 * chance) * (1 + 0.28 * land.stand(x, z)))
  }
}
