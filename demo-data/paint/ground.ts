// Level ground seen from the camera, coloured point by point with the width of a pixel at hand for fading texture.
import { type Brush, createBrush } from './brush.ts'
import { type Camera, groundDistance } from './camera.ts'
import { type Band, coverIndex } from './canvas.ts'

/** Sets the brush for the ground at X, Z; `across` and `along` are the metres that one pixel spans sideways and in depth. */
export type GroundColour = (x: number, z: number, across: number, along: number, brush: Brush) => void

/** Paints everything below the horizon; ground beyond `farM` takes the colour at `farM`'s distance. */
export function paintGround(band: Band, camera: Camera, farM: number, colour: GroundColour): void {
  const brush = createBrush()
  for (let y = Math.max(band.y0, Math.floor(camera.horizonY)); y < band.y1; y++) {
    const below = Math.max(y + 0.5, camera.horizonY + 0.25)
    const z = Math.min(farM, groundDistance(camera, below))
    const across = z / camera.focalPx
    const along = (z * across) / camera.eyeM
    const coverage = Math.min(1, y + 1 - camera.horizonY)
    const row = (y - band.y0) * band.width
    for (let x = 0; x < band.width; x++) {
      colour((x + 0.5 - camera.centreX) * across, z, across, along, brush)
      coverIndex(band, row + x, coverage, brush)
    }
  }
}
