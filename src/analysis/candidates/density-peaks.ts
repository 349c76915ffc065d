// Peaks of a cloud of points in (u, v): a smoothed histogram is flooded from the top, and a peak that is hardly parted from a
// higher one joins it. Every material in one light piles up to a peak of its own, however small it is in the frame.

export interface Peak {
  readonly u: number
  readonly v: number
}

/** A peak joins its higher neighbour where the saddle between them is above this part of it (tuned by simulation). */
const joinAbove = 0.95
/** Density of a bin that is looked at, in points: below, chance alone makes peaks. */
const leastDensity = 0.4
/** Most bins along one side: a guard against a few far points in an otherwise narrow cloud. */
const mostBins = 1500
/** Reach of the Gaussian in its deviations. */
const reach = 3

/** Smooths a plane in place along one direction by a normalised kernel. */
function convolve(
  plane: Float32Array,
  lines: number,
  length: number,
  lineStep: number,
  step: number,
  kernel: number[],
) {
  const half = kernel.length - 1
  const line = new Float32Array(length + 2 * half)
  for (let i = 0; i < lines; i++) {
    const start = i * lineStep
    let any = false
    for (let k = 0; k < length; k++) {
      const value = plane[start + k * step]
      line[k + half] = value
      if (value > 0) any = true
    }
    if (!any) continue
    for (let k = 0; k < length; k++) {
      let sum = kernel[0] * line[k + half]
      for (let d = 1; d <= half; d++) sum += kernel[d] * (line[k + half - d] + line[k + half + d])
      plane[start + k * step] = sum
    }
  }
}

/** Bins in order of falling density flow to the peak of a neighbour seen before them; peaks that hardly stand out join. */
function flood(density: Float32Array, columns: number): number[] {
  const order: number[] = []
  for (let bin = 0; bin < density.length; bin++) if (density[bin] > leastDensity) order.push(bin)
  const sorted = Uint32Array.from(order).sort((a, b) => density[b] - density[a])
  const owner = new Int32Array(density.length).fill(-1)
  const joined = new Map<number, number>()
  const find = (peak: number): number => {
    let root = peak
    for (let next = joined.get(root); next !== undefined; next = joined.get(root)) root = next
    return root
  }
  const peaks: number[] = []
  for (const bin of sorted) {
    let highest = -1
    for (let dy = -1; dy <= 1; dy++) {
      for (let dx = -1; dx <= 1; dx++) {
        const seen = owner[bin + dy * columns + dx]
        if (seen === undefined || seen < 0) continue
        const peak = find(seen)
        if (highest < 0 || peak === highest) highest = peak
        else {
          const [high, low] = density[peak] > density[highest] ? [peak, highest] : [highest, peak]
          if (density[bin] > joinAbove * density[low]) joined.set(low, high)
          highest = high
        }
      }
    }
    if (highest < 0) peaks.push(bin)
    owner[bin] = highest < 0 ? bin : highest
  }
  return peaks.filter((peak) => !joined.has(peak))
}

/** Peaks of the points (u, v) that `counts`, densest first. `bandwidth` in stops is the deviation of the Gaussian. */
export function findPeaks(
  u: Float32Array,
  v: Float32Array,
  counts: (point: number) => boolean,
  bandwidth: number,
): Peak[] {
  let [left, right, low, high] = [Infinity, -Infinity, Infinity, -Infinity]
  const counted = new Uint32Array(u.length)
  let points = 0
  for (let i = 0; i < u.length; i++) {
    if (!counts(i)) continue
    counted[points++] = i
    left = Math.min(left, u[i])
    right = Math.max(right, u[i])
    low = Math.min(low, v[i])
    high = Math.max(high, v[i])
  }
  if (!(right >= left)) return []
  const bin = Math.max(bandwidth / 2, (right - left) / mostBins, (high - low) / mostBins)
  const margin = Math.ceil((reach * bandwidth) / bin) + 1
  const columns = Math.floor((right - left) / bin) + 1 + 2 * margin
  const rows = Math.floor((high - low) / bin) + 1 + 2 * margin
  const density = new Float32Array(columns * rows)
  for (const i of counted.subarray(0, points)) {
    density[(Math.floor((v[i] - low) / bin) + margin) * columns + Math.floor((u[i] - left) / bin) + margin]++
  }
  const kernel = Array.from({ length: margin }, (_, d) => Math.exp(-0.5 * ((d * bin) / bandwidth) ** 2))
  const weight = kernel.reduce((sum, value, d) => sum + (d ? 2 : 1) * value, 0)
  const normalised = kernel.map((value) => value / weight)
  convolve(density, rows, columns, columns, 1, normalised)
  convolve(density, columns, rows, 1, columns, normalised)
  return flood(density, columns)
    .sort((a, b) => density[b] - density[a])
    .map((peak) => ({
      u: left + ((peak % columns) - margin + 0.5) * bin,
      v: low + (Math.floor(peak / columns) - margin + 0.5) * bin,
    }))
}
