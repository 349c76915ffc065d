// Runs inside a page: what one hover drawing costs beside a plain copy of the same view, both from the same overview.
import type { RawShaderMaterial, WebGLRenderTarget } from 'three'

import { defaultChain } from '../../src/edits/default-chain.ts'
import type { FrameFacts, Overview } from '../../src/frame/frame.ts'
import { createCanvasContext } from '../../src/gpu/canvas-context.ts'
import { detectCapabilities } from '../../src/gpu/capabilities.ts'
import { createChainPrograms } from '../../src/gpu/chain-program.ts'
import { createHalfSize, halved } from '../../src/gpu/half-size.ts'
import { createOverviewTexture } from '../../src/gpu/overview-texture.ts'
import { createPass, passMaterial } from '../../src/gpu/pass.ts'
import { writePlacement, writeTextureSource } from '../../src/gpu/place-uniforms.ts'
import { viewStage } from '../../src/gpu/stages.ts'
import { addStep } from '../../src/edits/stack.ts'
import { describe } from '../../src/pipeline/describe.ts'

export interface HoverCost {
  readonly renderer: string
  /** Milliseconds, the best of many drawings in turn. */
  readonly copy: number
  readonly opening: number
  readonly withHueTurn: number
  /** The opening chain as slow graphics draw it while something moves. */
  readonly moving: number
}

export const canvas = { width: 1600, height: 1000 }
export const frame = { frameWidth: 6000, frameHeight: 4000 }
const rounds = 12

export const facts: FrameFacts = {
  meanCameraRgb: [0.34, 0.24, 0.18],
  referenceNeutral: [0.5, -0.4],
  noise: { fullScaleElectrons: 40_000, readNoiseElectrons: 4 },
  cameraToXyz: null,
  filterNm: 665,
  aspect: 1.5,
}

/** Light and shade with two materials of different colour, a little noise, and a share beyond saturation. */
export function paintedOverview(width = 1732, height = 1155): Overview {
  const rgba = new Float32Array(width * height * 4)
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i += 4) {
      const level =
        0.05 + 0.3 * (1 + Math.sin(x / 97) * Math.cos(y / 71)) + 0.01 * ((Math.imul(i, 2654435761) >>> 24) / 256)
      const tint = 0.35 * Math.sin(x / 211 + y / 301)
      const rgb = [level * (1.41 + tint), level, level * (0.77 - 0.6 * tint)]
      rgba.set([...rgb, Math.max(...rgb)], i)
    }
  }
  return { width, height, rgba, scale: frame.frameWidth / width }
}

/** Draws each in turn, so that a busy machine slows all of them alike; the best of several rounds counts. */
export async function bestOf<Name extends string>(draws: Record<Name, () => unknown>): Promise<Record<Name, number>> {
  const names = Object.keys(draws) as Name[]
  const best = Object.fromEntries(names.map((name) => [name, Infinity])) as Record<Name, number>
  for (let round = 0; round < rounds; round++) {
    for (const name of names) {
      const started = performance.now()
      await draws[name]()
      best[name] = Math.min(best[name], performance.now() - started)
    }
  }
  return best
}

export async function measureHover(): Promise<HoverCost> {
  const renderer = createCanvasContext(new OffscreenCanvas(1, 1))
  renderer.setSize(canvas.width, canvas.height, false)
  const gl = renderer.getContext() as WebGL2RenderingContext
  const capabilities = detectCapabilities(gl)
  const pass = createPass(renderer)
  const programs = createChainPrograms()
  const half = createHalfSize(pass)
  const overview = paintedOverview()
  const { texture, upload } = createOverviewTexture(renderer, overview, capabilities.tiles16F)
  upload(Infinity)
  const plain = passMaterial([
    ...viewStage.before,
    'out vec4 colour; void main() { colour = vec4(cameraAt(sensorAt(gl_FragCoord.xy)).rgb, 1.0); }',
  ])
  const opening = describe(defaultChain(facts), facts)
  const turned = describe(addStep(defaultChain(facts), 'hueTurn', { angleDeg: 30 }), facts)
  const place = { ...frame, left: 25, top: -16, zoom: 1550 / frame.frameWidth, screenHeight: canvas.height }
  const pixel = new Uint8Array(4)

  function draw(material: RawShaderMaterial, target: WebGLRenderTarget | null = null): void {
    writePlacement(material.uniforms, target ? halved(place, target.height) : place)
    writeTextureSource(material.uniforms, { texture, x: 0, y: 0, scale: overview.scale, level: 0, nearest: false })
    pass.draw(material, target, target ?? canvas)
  }
  const finish = () => gl.readPixels(0, 0, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, pixel)
  const best = await bestOf({
    copy() {
      draw(plain)
      finish()
    },
    opening() {
      draw(programs.material(viewStage, opening))
      finish()
    },
    withHueTurn() {
      draw(programs.material(viewStage, turned))
      finish()
    },
    moving() {
      draw(programs.material(viewStage, opening), half.target(canvas))
      half.show(canvas)
      finish()
    },
  })
  return { renderer: capabilities.renderer, ...best }
}
