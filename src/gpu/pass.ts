// Draws a material into a rectangle of a target: the one way anything here reaches pixels.
import {
  BufferAttribute,
  BufferGeometry,
  Camera,
  GLSL3,
  Mesh,
  NoBlending,
  RawShaderMaterial,
  Scene,
  type WebGLRenderer,
  type WebGLRenderTarget,
} from 'three'

import areaVertex from '../../shaders/area.vert.glsl?raw'
import precision from '../../shaders/precision.glsl?raw'
import { createUniformsAsked } from './uniforms-asked.ts'

/** Edges in pixels of the target, rows counted upward as GL does. */
export interface Area {
  readonly left: number
  readonly bottom: number
  readonly right: number
  readonly top: number
}

export interface Size {
  readonly width: number
  readonly height: number
}

export type Uniforms = RawShaderMaterial['uniforms']

export function setUniforms(uniforms: Uniforms, values: Readonly<Record<string, unknown>>): void {
  for (const [name, value] of Object.entries(values)) uniforms[name] = { value }
}

/** A material of the given fragment shader texts; every uniform they name must be set before the first draw. */
export function passMaterial(texts: readonly string[]): RawShaderMaterial {
  return new RawShaderMaterial({
    glslVersion: GLSL3,
    vertexShader: areaVertex,
    fragmentShader: [precision, ...texts].join('\n'),
    blending: NoBlending,
    depthTest: false,
    depthWrite: false,
  })
}

export interface Pass {
  /** The one material of these texts, kept as long as the pass: what is the same for every frame is compiled once. */
  material(texts: readonly string[]): RawShaderMaterial
  /** Draws `area` (everything when omitted) of `target`; null is the canvas. */
  draw(material: RawShaderMaterial, target: WebGLRenderTarget | null, size: Size, area?: Area): void
  /** Compiles and finds the uniforms without holding up the interface; resolves when a draw would not wait. */
  prepare(material: RawShaderMaterial): Promise<void>
}

export function createPass(renderer: WebGLRenderer): Pass {
  const geometry = new BufferGeometry()
  geometry.setAttribute('position', new BufferAttribute(new Float32Array([0, 0, 1, 0, 0, 1, 1, 1]), 2))
  geometry.setIndex([0, 1, 2, 2, 1, 3])
  const mesh = new Mesh(geometry)
  mesh.frustumCulled = false
  mesh.matrixAutoUpdate = false
  const scene = new Scene().add(mesh)
  scene.matrixWorldAutoUpdate = false
  const camera = new Camera()
  const kept = new Map<string, RawShaderMaterial>()
  const askUniforms = createUniformsAsked(renderer)

  return {
    material(texts) {
      const key = texts.join('\n')
      const material = kept.get(key) ?? passMaterial(texts)
      kept.set(key, material)
      return material
    },
    draw(material, target, size, area = { left: 0, bottom: 0, right: size.width, top: size.height }) {
      const x = (pixel: number) => (2 * pixel) / size.width - 1
      const y = (pixel: number) => (2 * pixel) / size.height - 1
      setUniforms(material.uniforms, { area: [x(area.left), y(area.bottom), x(area.right), y(area.top)] })
      mesh.material = material
      renderer.setRenderTarget(target)
      renderer.render(scene, camera)
    },
    async prepare(material) {
      mesh.material = material
      await renderer.compileAsync(scene, camera)
      await askUniforms(material)
    },
  }
}
