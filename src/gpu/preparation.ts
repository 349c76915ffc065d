// Compiles materials before they are drawn with, so that a change of the chain never holds up the interface.
import type { RawShaderMaterial } from 'three'

import type { Pass } from './pass.ts'

export interface Preparation {
  /** True when drawing with all of these would not wait for a compiler; otherwise they are compiled and `onReady` called. */
  isReady(materials: readonly RawShaderMaterial[]): boolean
  /** Everything must be compiled anew, after a lost context. */
  forget(): void
}

export function createPreparation(pass: Pass, onReady: () => void): Preparation {
  let ready = new WeakSet<RawShaderMaterial>()
  let started = new WeakSet<RawShaderMaterial>()

  async function prepare(material: RawShaderMaterial): Promise<void> {
    started.add(material)
    const list = ready
    await pass.prepare(material)
    list.add(material)
    onReady()
  }

  return {
    isReady(materials) {
      const missing = materials.filter((material) => !ready.has(material))
      for (const material of missing) if (!started.has(material)) void prepare(material)
      return missing.length === 0
    },
    forget() {
      ready = new WeakSet()
      started = new WeakSet()
    },
  }
}
