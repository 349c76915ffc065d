// A made-up meadow under a sky, painted with noise: something to look at where a test or a drawing needs a picture.

const random = (x: number, y: number) => {
  const s = Math.sin(x * 127.1 + y * 311.7) * 43758.5453
  return s - Math.floor(s)
}

function smoothNoise(x: number, y: number): number {
  const [i, j] = [Math.floor(x), Math.floor(y)]
  const [u, v] = [x - i, y - j]
  const [a, b] = [u * u * (3 - 2 * u), v * v * (3 - 2 * v)]
  const upper = random(i, j) * (1 - a) + random(i + 1, j) * a
  const lower = random(i, j + 1) * (1 - a) + random(i + 1, j + 1) * a
  return upper * (1 - b) + lower * b
}

/** Noise of several sizes, about 0…1. */
function cloudNoise(x: number, y: number, octaves: number): number {
  let sum = 0
  for (let k = 0; k < octaves; k++) sum += smoothNoise(x * 2 ** k, y * 2 ** k) / 2 ** (k + 1)
  return sum
}

/** Encoded red, green, blue in 0…1 at a place of the scene (x, y in 0…1). */
export function sceneColour(x: number, y: number): [number, number, number] {
  const horizon = 0.56 - 0.05 * cloudNoise(x * 3 + 4, 2, 3)
  if (y < horizon) {
    const cloud = Math.min(Math.max(cloudNoise(x * 5, y * 9, 5) * 2.2 - 0.75, 0), 1)
    const depth = 0.75 + 0.4 * y
    return [0.3 * depth + 0.55 * cloud, 0.42 * depth + 0.44 * cloud, 0.6 * depth + 0.25 * cloud]
  }
  const grass = 0.62 + 0.5 * (cloudNoise(x * 60, y * 90, 4) - 0.5) - 0.15 * (y - horizon)
  return [grass * 0.98, grass * 0.95, grass * 0.78]
}

/** The scene as a canvas of this size. */
export function paintScene(width: number, height: number): HTMLCanvasElement {
  const canvas = Object.assign(document.createElement('canvas'), { width, height })
  const context = canvas.getContext('2d')!
  const image = context.createImageData(width, height)
  for (let i = 0; i < width * height; i++) {
    const colour = sceneColour((i % width) / width, Math.floor(i / width) / height)
    for (let channel = 0; channel < 3; channel++) image.data[i * 4 + channel] = colour[channel] * 255
    image.data[i * 4 + 3] = 255
  }
  context.putImageData(image, 0, 0)
  return canvas
}
