// A program that says it is linked may still be compiled by the driver when it is first asked about, and three asks for its uniforms at
// the first draw: the interface would wait. Here that work is asked for without an answer, and the questions come after it.
import type { RawShaderMaterial, WebGLRenderer } from 'three'

import { workDone } from './work-done.ts'

interface Program {
  readonly program: WebGLProgram
  /** Asks at the first call, remembers for the others. */
  getUniforms(): unknown
}

/** Finds the uniforms of compiled materials, one material at a time: a question waits for all that the GPU was told before it. */
export function createUniformsAsked(renderer: WebGLRenderer): (material: RawShaderMaterial) => Promise<void> {
  const gl = renderer.getContext() as WebGL2RenderingContext
  const asked = new WeakSet<Program>()
  let line = Promise.resolve()

  async function ask(material: RawShaderMaterial): Promise<void> {
    const { currentProgram } = renderer.properties.get(material) as { readonly currentProgram?: Program }
    if (!currentProgram || asked.has(currentProgram) || gl.isContextLost()) return
    gl.validateProgram(currentProgram.program)
    await workDone(gl)
    if (gl.isContextLost()) return
    currentProgram.getUniforms()
    asked.add(currentProgram)
  }

  return (material) => {
    const asking = line.then(() => ask(material))
    // One material that fails is told to whoever asked for it, and holds up no other.
    line = asking.catch(() => {})
    return asking
  }
}
