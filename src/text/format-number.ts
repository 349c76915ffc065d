// Numbers as people read and type them: a true minus sign, a sign where zero is the middle, never an exponent.

/** Decimals that a step of this size needs, 0…4. */
export function decimalsOf(step: number): number {
  for (let decimals = 0; decimals < 4; decimals++) {
    if (Math.abs(step * 10 ** decimals - Math.round(step * 10 ** decimals)) < 1e-9) return decimals
  }
  return 4
}

/** e.g. (−1.2, 2, true) → "−1.20", (0.5, 1, true) → "+0.5". Zero carries no sign. */
export function formatNumber(value: number, decimals: number, signed = false): string {
  const size = Math.abs(value).toFixed(decimals)
  if (Number(size) === 0) return size
  return `${value < 0 ? '−' : signed ? '+' : ''}${size}`
}

/** A typed number in either decimal mark and with either minus sign, or null where it is not a finite number. */
export function parseNumber(text: string): number | null {
  const plain = text.trim().replace(/[−–]/g, '-').replace(',', '.')
  if (!/^[+-]?(\d+\.?\d*|\.\d+)$/.test(plain)) return null
  const value = Number(plain)
  return Number.isFinite(value) ? value : null
}

/** "about 40 s left", "about 3 min left"; coarse, because an estimate is. */
export function formatTimeLeft(seconds: number): string {
  if (seconds < 1.5) return 'about 1 s left'
  if (seconds < 10) return `about ${Math.round(seconds)} s left`
  if (seconds < 55) return `about ${Math.round(seconds / 5) * 5} s left`
  return `about ${Math.max(1, Math.round(seconds / 60))} min left`
}
