// A prepared material is drawn without a question to the driver: WebGL answers none before the GPU has done all it was told, so each
// question would hold up the interface. Calls that return a value do (those of WebGL 2.0; that they wait, from memory).
import { WebGLRenderTarget } from 'three'
import { expect, it } from 'vitest'

import { createCanvasContext } from '../../src/gpu/canvas-context.ts'
import { createPass, passMaterial, setUniforms } from '../../src/gpu/pass.ts'

const questions = [
  'getProgramInfoLog',
  'getShaderInfoLog',
  'getProgramParameter',
  'getActiveUniform',
  'getActiveAttrib',
  'getUniformLocation',
  'getAttribLocation',
  'getParameter',
  'getExtension',
  'getError',
] as const

function countQuestions(gl: WebGL2RenderingContext) {
  const asked: string[] = []
  for (const name of questions) {
    const ask = gl[name].bind(gl) as (...args: unknown[]) => unknown
    Object.assign(gl, { [name]: (...args: unknown[]) => (asked.push(name), ask(...args)) })
  }
  return asked
}

const flat = (level: number) =>
  passMaterial([`uniform float level; out vec4 colour; void main() { colour = vec4(level + ${level}.); }`])

it('drawing with what was prepared asks nothing, and what was not prepared asks', async () => {
  const renderer = createCanvasContext(new OffscreenCanvas(4, 4))
  const asked = countQuestions(renderer.getContext() as WebGL2RenderingContext)
  const pass = createPass(renderer)
  const target = new WebGLRenderTarget(4, 4, { depthBuffer: false })
  const [prepared, other, unprepared] = [flat(0), flat(1), flat(2)]
  for (const material of [prepared, other, unprepared]) setUniforms(material.uniforms, { level: 0.5 })
  await Promise.all([pass.prepare(prepared), pass.prepare(other)])
  pass.draw(prepared, target, target)
  asked.length = 0
  pass.draw(other, target, target)
  pass.draw(prepared, target, target)
  expect(asked).toEqual([])
  pass.draw(unprepared, target, target)
  expect(asked).toContain('getActiveUniform')
  renderer.dispose()
})
