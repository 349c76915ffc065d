// A made-up scene before any camera: what stands where, and how much sun, skylight and distance it gets. Drawn at twice the
// size of the cells, so that cells at edges hold two materials, as real ones do.
import { randomNumbers } from '../support/synthetic-sensor.ts'
import { valueNoise } from './value-noise.ts'

export const sceneWidth = 600
export const sceneHeight = 400

/** How strongly a kind of surface varies: deviation in stops and size of its features in samples. */
export interface Texture {
  readonly stops: number
  readonly size: number
  /** Whether parts of it shade one another, as leaves do. */
  readonly selfShading?: boolean
}

export const smooth: Texture = { stops: 0.04, size: 40 }
export const plain: Texture = { stops: 0.12, size: 14 }
export const rough: Texture = { stops: 0.3, size: 6 }
export const leaves: Texture = { stops: 0.3, size: 5, selfShading: true }

export interface SurfaceLook {
  readonly texture: Texture
  /** Brightness of all light on it; 1 faces the sun. */
  readonly facing?: number
  /** Share of the picture that air adds, 0…1. */
  readonly haze?: number
}

type Cover = (x: number, y: number) => boolean

/** Painting in coordinates x 0…1.5 and y 0…1 downwards. */
export class SceneCanvas {
  readonly random: () => number
  readonly materials: string[] = []
  readonly label = new Uint8Array(sceneWidth * sceneHeight)
  readonly sun = new Float32Array(sceneWidth * sceneHeight)
  readonly sky = new Float32Array(sceneWidth * sceneHeight)
  readonly haze = new Float32Array(sceneWidth * sceneHeight)

  constructor(seed: number) {
    this.random = randomNumbers(seed)
  }

  between(low: number, high: number): number {
    return low + (high - low) * this.random()
  }

  oneOf<T>(choices: readonly T[]): T {
    return choices[Math.floor(this.random() * choices.length)]
  }

  private id(material: string): number {
    const known = this.materials.indexOf(material)
    return known >= 0 ? known : this.materials.push(material) - 1
  }

  /** A field of unit deviation at a place. */
  field(size: number, octaves = 3): (x: number, y: number) => number {
    const seed = Math.floor(this.random() * 1e6)
    return valueNoise(size, seed, octaves)
  }

  paint(material: string, cover: Cover, { texture, facing = 1, haze = 0 }: SurfaceLook): void {
    const id = this.id(material)
    const field = this.field(texture.size)
    for (let j = 0, i = 0; j < sceneHeight; j++) {
      for (let k = 0; k < sceneWidth; k++, i++) {
        if (!cover((k + 0.5) / sceneHeight, (j + 0.5) / sceneHeight)) continue
        const n = field(k, j)
        const level = facing * 2 ** (texture.stops * n)
        this.label[i] = id
        this.sun[i] = texture.selfShading ? level * Math.min(Math.max(0.65 + 0.3 * n, 0.1), 1) : level
        this.sky[i] = texture.selfShading ? level * Math.min(Math.max(0.75 + 0.2 * n, 0.3), 1) : level
        this.haze[i] = haze
      }
    }
  }

  /** Sky that pales towards `horizon`, with clouds over `cloudy` of it. */
  paintSky(horizon: Cover, cloudy: number): void {
    this.paint('sky', horizon, { texture: { stops: 0, size: 40 } })
    const id = this.id('sky')
    for (let i = 0; i < this.label.length; i++) {
      if (this.label[i] !== id) continue
      const low = Math.min(1, Math.floor(i / sceneWidth) / sceneHeight / 0.6) ** 1.5
      this.sun[i] = 1 - low
      this.sky[i] = low
    }
    if (cloudy <= 0) return
    const shape = this.field(90, 5)
    const limit = 1.4 - 2.6 * cloudy
    const sky = this.label.slice()
    this.paint(
      'cloud_sunlit',
      (x, y) =>
        sky[Math.floor(y * sceneHeight) * sceneWidth + Math.floor(x * sceneHeight)] === id &&
        horizon(x, y) &&
        shape(x * 200, y * 400) > limit,
      { texture: { stops: 0.2, size: 30 }, facing: this.between(0.7, 1.1) },
    )
  }

  /** Lumps (trees, bushes, stones) about a place. */
  lump(x0: number, y0: number, width: number, height: number, ragged: number): Cover {
    const edge = this.field(14)
    return (x, y) => {
      if (Math.abs(x - x0) > 1.7 * width || Math.abs(y - y0) > 1.7 * height) return false
      const r = Math.hypot((x - x0) / width, (y - y0) / height)
      return r < 1.6 && r + ragged * edge(x * sceneHeight, y * sceneHeight) < 1
    }
  }
}

export const box =
  (left: number, top: number, right: number, bottom: number): Cover =>
  (x, y) =>
    x > left && x < right && y > top && y < bottom
export const below =
  (line: number): Cover =>
  (_, y) =>
    y > line
export const everywhere: Cover = () => true
