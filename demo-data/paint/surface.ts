// What a textured surface is at one point, before light falls on it. Textures fill this in; a scene lights it.
import type { Material } from '../light/triplets.ts'
import { type Brush, lightMix, scale } from './brush.ts'

export interface Surface {
  first: Material
  second: Material
  /** Share of `second`, 0…1. */
  share: number
  /** Brightness of the pigment, about 1. */
  tone: number
  /** Small-scale slope towards the sun, −1…1: changes direct sun by that share. */
  relief: number
  /** How much of the sky is hidden by small-scale hollows, 0…1. */
  hollow: number
}

export function createSurface(material: Material): Surface {
  return { first: material, second: material, share: 0, tone: 1, relief: 0, hollow: 0 }
}

/** Fills `surface` for (u, v) metres on a face; `fp` = width of a pixel in metres. */
export type Texture = (u: number, v: number, fp: number, surface: Surface) => void

/** Direction towards the sun within a face (metres of `across` and `up` per metre), for relief. */
export interface SunSlope {
  readonly u: number
  readonly v: number
}

/** 0 below `from`, 1 above `to`, smooth between. */
export function smoothStep(from: number, to: number, v: number): number {
  const t = Math.min(1, Math.max(0, (v - from) / (to - from)))
  return t * t * (3 - 2 * t)
}

/**
 * Lights a surface: `direct` = visible share of sun × angle, `sky` = share of the sky seen, `bounce` = sunlight returned by
 * bright surroundings (a share of full sun, of nearly its colour). The ground truth counts only direct sun.
 */
export function lightSurface(brush: Brush, surface: Surface, direct: number, sky: number, bounce: number): void {
  const open = 1 - surface.hollow
  const sun = direct * (1 + surface.relief)
  lightMix(brush, surface.first, surface.second, surface.share, sun + bounce * open, sky * open)
  scale(brush, surface.tone < 0.05 ? 0.05 : surface.tone)
  brush.sun = direct > 1 ? 1 : direct
}
