// Compares two pictures and says where they differ most, as in/cpu/gpu. A colour is measured as a whole: in floats, what its
// largest channel rounds by ends up in the others as soon as a matrix mixes them.

export interface Worst {
  /** Largest difference of a channel: absolute in pixels below 1, above relative to the pixel’s largest channel. */
  readonly difference: number
  readonly text: string
}

/**
 * `rgba` is what went in; `cpu` and `gpu` are interleaved RGB that came out. Two values that are both not finite agree.
 * `allowed` is taken off each difference first.
 */
export function worstPixel(rgba: Float32Array, cpu: Float32Array, gpu: Float32Array, allowed?: Float32Array): Worst {
  const largestOf = (pixel: number) =>
    Math.max(...[0, 1, 2].map((channel) => Math.abs(cpu[pixel * 3 + channel])).filter(Number.isFinite))
  let difference = -1
  let at = 0
  for (let i = 0; i < cpu.length; i++) {
    const bothOdd = !Number.isFinite(cpu[i]) && !Number.isFinite(gpu[i])
    const beyond = Math.abs(cpu[i] - gpu[i]) - (allowed?.[i] ?? 0)
    const apart = bothOdd ? 0 : Math.max(beyond, 0) / Math.max(1, largestOf(Math.floor(i / 3)))
    if (apart > difference || Number.isNaN(apart)) {
      difference = apart
      at = Math.floor(i / 3)
      if (Number.isNaN(apart)) break
    }
  }
  const list = (values: Float32Array, size: number) => [...values.subarray(at * size, at * size + 3)].join(' ')
  return {
    difference,
    text: `in ${list(rgba, 4)} peak ${rgba[at * 4 + 3]} / cpu ${list(cpu, 3)} / gpu ${list(gpu, 3)}: ${difference}`,
  }
}

/** 'agrees', or the worst pixel in words. */
export const verdict = (worst: Worst, tolerance: number) => (worst.difference <= tolerance ? 'agrees' : worst.text)
