// Colours of leaves, flowers and stems in the courtyard, in sun and in open shade.
import type { Palette } from '../light/triplets.ts'
import { type Air, throughAir } from '../paint/air.ts'
import { light, lightMix, scale } from '../paint/brush.ts'
import type { Surroundings } from '../paint/lit-face.ts'
import type { Dye } from '../paint/place-foliage.ts'
import { sunPast } from '../paint/sun-casters.ts'

/** Share of sunlight that leaves in the sun pass on to the leaves around them; own estimate. */
const leafGlow = 0.16

/** Returns dyes by the material of the leaves; `far` plants stand beyond the walls, in the open and behind some air. */
export function createLeafDye(
  palette: Palette,
  around: Surroundings,
  air: Air,
): (leafName: 'leaf' | 'mapleLeaf' | 'driedLeaf', far: boolean) => Dye {
  const { sun, casters } = around
  const old = palette.of('yellowLeaf')
  const flower = palette.of('cotton')
  const bark = palette.of('bark')
  return (leafName, far) => {
    const leaf = palette.of(leafName)
    const openAt = (x: number, y: number, z: number) => (far ? 1 : sunPast(casters, sun, x, y, z))
    return {
      leaf(part, brush) {
        const { x, y, z, sky, tint } = part
        const open = openAt(x, y, z)
        const direct = part.sun * open
        const skyShare = sky * (far ? 0.9 : around.sky(x, y, z, [0, 1, 0]))
        const bounce = far ? 0.04 : around.bounce(x, y, z, [0, 0, -1]) * (0.4 + 0.6 * sky)
        if (part.kind === 1) light(brush, flower, direct * 1.1 + bounce, skyShare)
        else
          lightMix(brush, leaf, old, tint > 0.82 ? 0.5 : 0, direct * 1.15 + bounce, skyShare, 0, leafGlow * open * sky)
        scale(brush, 1 + 0.2 * tint)
        brush.sun = Math.min(1, direct)
        if (far) throughAir(brush, air, z)
      },
      limb(part, brush) {
        const direct = part.sun * openAt(part.x, part.y, part.z)
        light(brush, bark, direct * 1.2 + 0.05, 0.5 * part.sky)
        brush.sun = Math.min(1, direct)
        if (far) throughAir(brush, air, part.z)
      },
    }
  }
}
