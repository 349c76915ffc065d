// Reading sampled RGB data between its nodes: a line per channel, and a cube by tetrahedra. Places in 0…1 per channel, clamped.
// Hardware filters have few weight bits and trilinear weights bend the grey axis, so both engines read like this instead.

/** Three numbers, changed in place. */
export type Triple = Float64Array | number[]

const clamped = (x: number) => (x > 0 ? Math.min(x, 1) : 0)

/**
 * Replaces `rgb` by the linear reading of a one-dimensional RGB table (`length` entries, interleaved). NaN reads the first entry.
 */
export function readLine(data: ArrayLike<number>, length: number, rgb: Triple): void {
  for (let channel = 0; channel < 3; channel++) {
    const place = clamped(rgb[channel]) * (length - 1)
    const low = Math.min(Math.floor(place), length - 2)
    const from = data[low * 3 + channel]
    rgb[channel] = from + (place - low) * (data[(low + 1) * 3 + channel] - from)
  }
}

/**
 * Replaces `rgb` by the tetrahedral reading of a cube (`size` entries per axis, red fastest, interleaved): from the lower corner
 * of the cell along the axis of the largest share first (Sakamoto & Itooka, US patent 4,275,413, expired). NaN reads entry 0.
 */
export function readCube(data: ArrayLike<number>, size: number, rgb: Triple): void {
  const last = size - 1
  const [r, g, b] = [clamped(rgb[0]) * last, clamped(rgb[1]) * last, clamped(rgb[2]) * last]
  const [lowR, lowG, lowB] = [
    Math.min(Math.floor(r), last - 1),
    Math.min(Math.floor(g), last - 1),
    Math.min(Math.floor(b), last - 1),
  ]
  const [shareR, shareG, shareB] = [r - lowR, g - lowG, b - lowB]
  const strideG = 3 * size
  const strideB = strideG * size
  const corner = lowR * 3 + lowG * strideG + lowB * strideB
  const first = shareR >= shareG ? (shareR >= shareB ? 3 : strideB) : shareG >= shareB ? strideG : strideB
  const lastAxis = shareR < shareG ? (shareR < shareB ? 3 : strideB) : shareG < shareB ? strideG : strideB
  const most = Math.max(shareR, shareG, shareB)
  const least = Math.min(shareR, shareG, shareB)
  const middle = shareR + shareG + shareB - most - least
  const far = corner + 3 + strideG + strideB
  for (let channel = 0; channel < 3; channel++) {
    rgb[channel] =
      data[corner + channel] * (1 - most) +
      data[corner + first + channel] * (most - middle) +
      data[far - lastAxis + channel] * (middle - least) +
      data[far + channel] * least
  }
}
