// Water-lily leaves afloat: round, notched, a little wavy at the rim, veined from the notch; a few flowers between them.
// Drawn exactly in the water plane, so that they flatten with distance as real ones do. Ground truth: `leaf`, `cotton`.
import type { Palette } from '../light/triplets.ts'
import { createBrush, lightMix, scale } from './brush.ts'
import { type Camera, columnOf, rowOf } from './camera.ts'
import { type Band, coverIndex } from './canvas.ts'
import { createStream, hash } from './hash.ts'
import { noise2 } from './noise.ts'
import { drawLeaf } from './shapes.ts'
import type { Vector } from './vector.ts'

export interface PadGroup {
  readonly x: number
  readonly z: number
  readonly radiusM: number
  readonly count: number
}

interface Pad {
  readonly x: number
  readonly z: number
  readonly radiusM: number
  /** Direction of the notch, radians. */
  readonly turn: number
  readonly tone: number
  readonly yellow: number
  readonly flower: boolean
}

/** Lays out the leaves: they touch, but hardly overlap. */
export function layPads(groups: readonly PadGroup[], seed: number): Pad[] {
  const pads: Pad[] = []
  groups.forEach((group, g) => {
    for (let i = 0; i < group.count; i++) {
      const next = createStream(hash(seed, g, i))
      const turn = next() * 6.283
      const out = Math.sqrt(next()) * (0.6 + 0.4 * next())
      const x = group.x + Math.cos(turn) * out * group.radiusM
      const z = group.z + Math.sin(turn) * out * group.radiusM * 0.9
      const radiusM = 0.055 + 0.085 * next() ** 0.7
      if (pads.some((p) => Math.hypot(p.x - x, p.z - z) < (p.radiusM + radiusM) * 0.86)) continue
      pads.push({
        x,
        z,
        radiusM,
        turn: next() * 6.283,
        tone: 0.8 + 0.35 * next(),
        yellow: next() ** 9,
        flower: next() < 0.05,
      })
    }
  })
  return pads.sort((a, b) => b.z - a.z)
}

/** Signed distance in metres from the rim, positive inside. */
function insidePad(pad: Pad, dx: number, dz: number): number {
  const r = Math.sqrt(dx * dx + dz * dz)
  const a = Math.atan2(dz, dx)
  const wave = 1 + 0.035 * Math.sin(3 * a + pad.turn * 5) + 0.02 * Math.sin(7 * a + pad.turn * 9)
  let off = a - pad.turn
  off -= 6.283185 * Math.round(off / 6.283185)
  const notch = (Math.abs(off) - 0.09 - 0.1 * pad.tone * (r / pad.radiusM)) * r
  return Math.min(pad.radiusM * wave - r, notch + 0.002)
}

export function paintPads(band: Band, camera: Camera, palette: Palette, pads: readonly Pad[], sun: Vector): void {
  const brush = createBrush()
  const leaf = palette.of('leaf')
  const old = palette.of('yellowLeaf')
  for (const pad of pads) {
    const { x, z, radiusM, turn } = pad
    const reach = radiusM * 1.08
    const top = Math.max(band.y0, Math.floor(rowOf(camera, 0, z + reach)))
    const bottom = Math.min(band.y1 - 1, Math.ceil(rowOf(camera, 0, Math.max(0.4, z - reach))))
    for (let py = top; py <= bottom; py++) {
      const down = (py + 0.5 - camera.horizonY) / camera.focalPx
      const gz = camera.eyeM / down
      const alongM = gz / (down * camera.focalPx)
      const acrossM = gz / camera.focalPx
      const left = Math.max(0, Math.floor(columnOf(camera, x - reach, gz)))
      const right = Math.min(band.width - 1, Math.ceil(columnOf(camera, x + reach, gz)))
      for (let px = left; px <= right; px++) {
        const dx = (px + 0.5 - camera.centreX) * acrossM - x
        const dz = gz - z
        const d = insidePad(pad, dx, dz)
        if (d < -alongM * 0.6) continue
        const slopeX = (insidePad(pad, dx + acrossM * 0.5, dz) - d) * 2
        const slopeZ = (insidePad(pad, dx, dz + alongM * 0.5) - d) * 2
        const cover = 0.5 + d / (Math.abs(slopeX) + Math.abs(slopeZ) + 1e-6)
        if (cover <= 0) continue
        const r = Math.sqrt(dx * dx + dz * dz) / radiusM
        const a = Math.atan2(dz, dx) - turn
        const vein = Math.abs(Math.sin(a * 7.5 + 0.6 * noise2(r * 3, a, 7)))
        const veins = acrossM < 0.003 ? (vein < 0.1 + 0.08 * (1 - r) ? 0.14 : 0) - 0.08 * vein : 0
        const curl = 0.32 * Math.max(0, r - 0.8) * 5 * Math.cos(a + turn - Math.atan2(sun[2], sun[0]) + 3.14)
        const blotch = noise2(dx / 0.03 + 9 * turn, dz / 0.03, 5)
        const age = Math.min(1, pad.yellow * 1.4 * Math.max(0, r + 0.4 * blotch))
        lightMix(brush, leaf, old, age, sun[1] * (1 + curl) + 0.05, 0.95)
        scale(brush, pad.tone * (1 + veins + 0.07 * blotch) * (r > 0.96 ? 0.85 : 1))
        coverIndex(band, (py - band.y0) * band.width + px, Math.min(1, cover), brush)
      }
    }
    if (pad.flower) paintFlower(band, camera, palette, pad, sun)
  }
}

function paintFlower(band: Band, camera: Camera, palette: Palette, pad: Pad, sun: Vector): void {
  const brush = createBrush()
  const petal = palette.of('cotton')
  const heart = palette.of('yellowLeaf')
  const z = pad.z - pad.radiusM * 0.6
  const k = camera.focalPx / z
  const cx = columnOf(camera, pad.x + pad.radiusM * 0.5, z)
  const cy = rowOf(camera, 0.015, z)
  const size = 0.06 * k
  if (cy + size < band.y0 || cy - size * 1.3 > band.y1) return
  for (let ring = 0; ring < 3; ring++) {
    const count = 9 - ring
    for (let i = 0; i < count; i++) {
      const a = ((i + 0.5 * ring + pad.turn) * 6.283) / count
      const dx = Math.cos(a) * size * (1 - 0.22 * ring)
      const dy = (-0.3 - 0.22 * ring - 0.22 * Math.sin(a)) * size
      const facing = Math.max(0.1, 0.55 + 0.45 * Math.cos(a) * Math.sign(sun[0]))
      lightMix(brush, petal, heart, 0.04, facing * (0.8 + 0.1 * ring), 0.9)
      drawLeaf(band, cx, cy, dx, dy, size * 0.17, 1, brush)
    }
  }
  lightMix(brush, heart, petal, 0.2, 0.7, 0.7)
  drawLeaf(band, cx - size * 0.16, cy - size * 0.34, size * 0.32, 0, size * 0.1, 1, brush)
}
