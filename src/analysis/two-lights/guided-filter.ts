// Smooths one plane along the edges of another (guided filter: He, Sun & Tang 2010): inside every window the result is a
// straight line over the guide, so it turns where the guide turns and nowhere else.
import { boxSums } from '../box-sums.ts'

/** `input` smoothed over windows of `2 · radius + 1` cells; steps of the guide well above √`epsilon` are kept. Both finite. */
export function guidedFilter(
  input: Float32Array,
  guide: Float32Array,
  width: number,
  height: number,
  radius: number,
  epsilon: number,
): Float32Array {
  const counts = boxSums(new Float32Array(input.length).fill(1), width, height, radius)
  const mean = (plane: Float32Array) => boxSums(plane, width, height, radius).map((sum, i) => sum / counts[i])
  const guideMean = mean(guide)
  const inputMean = mean(input)
  const products = mean(guide.map((value, i) => value * input[i]))
  const squares = mean(guide.map((value) => value * value))
  const slope = products.map((product, i) => {
    const variance = squares[i] - guideMean[i] * guideMean[i]
    return (product - guideMean[i] * inputMean[i]) / (Math.max(variance, 0) + epsilon)
  })
  const offset = inputMean.map((value, i) => value - slope[i] * guideMean[i])
  const slopes = mean(slope)
  return mean(offset).map((value, i) => slopes[i] * guide[i] + value)
}
