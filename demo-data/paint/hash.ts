// Deterministic chance: every object hashes its own identity, so changing one flower never moves another.
// Integers in; unsigned 32-bit integers or numbers in [0, 1) out.

/** Mixes up to four integers into one 32-bit hash (finaliser of MurmurHash3, public domain). */
export function hash(a: number, b = 0, c = 0, d = 0): number {
  let h = (a | 0) ^ 0x9e3779b9
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b) ^ (b | 0)
  h = Math.imul(h ^ (h >>> 15), 0xc2b2ae35) ^ (c | 0)
  h = Math.imul(h ^ (h >>> 14), 0x27d4eb2f) ^ (d | 0)
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b)
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35)
  return (h ^ (h >>> 16)) >>> 0
}

/** `hash` of the same integers, as a number in [0, 1). */
export function hashUnit(a: number, b = 0, c = 0, d = 0): number {
  return hash(a, b, c, d) / 4294967296
}

/** A private random stream for one object: each call returns the next number in [0, 1) (mulberry32, public domain). */
export function createStream(seed: number): () => number {
  let state = seed | 0
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let t = Math.imul(state ^ (state >>> 15), state | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}
