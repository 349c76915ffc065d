// Shares of a picture in words and percent, as exact as they are worth.

/** e.g. 0 → "none", 0.00004 → "< 0.01 %", 0.0123 → "1.23 %". */
export function shareText(share: number): string {
  if (share <= 0) return 'none'
  if (share < 0.0001) return '< 0.01 %'
  return `${(share * 100).toFixed(share < 0.1 ? 2 : 1)} %`
}
