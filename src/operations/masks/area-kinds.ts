// Places told by where they lie in the frame. Distances are shares of the frame's width in both directions, so a circle is round.
import { smoothstep } from '../../math/smoothstep.ts'
import { numbers, slider } from '../controls.ts'
import { defineMaskKind } from './mask-kind.ts'

/** Least radius and softness, so that both engines divide by something. */
const least = 0.005

export const radial = defineMaskKind({
  id: 'radial',
  title: 'Round area',
  version: 1,
  controls: {
    /** x and y, 0…1 of the upright frame. */
    centre: numbers('Centre', [0.5, 0.5]),
    halfWidth: slider('Half width', 'of the width', least, 0.75, 0.005, 0.25, { bounded: true }),
    halfHeight: slider('Half height', 'of the width', least, 0.75, 0.005, 0.25, { bounded: true }),
    softness: slider('Softness', '', 0.02, 1, 0.01, 0.5, { bounded: true }),
  },
  readsMaterial: false,
  derive: ({ centre, halfWidth, halfHeight, softness }, { aspect }) => [
    centre[0],
    centre[1],
    1 / halfWidth,
    1 / (halfHeight * aspect),
    1 - softness,
    0,
  ],
  weight(pixel, _material, k) {
    const [across, down] = [(pixel[4] - k[0]) * k[2], (pixel[5] - k[1]) * k[3]]
    return 1 - smoothstep(k[4], 1, Math.sqrt(across * across + down * down))
  },
})

export const graduated = defineMaskKind({
  id: 'graduated',
  title: 'Graduated area',
  version: 1,
  controls: {
    /** x, y up to which all is inside, and x, y from which nothing is, 0…1 of the upright frame. */
    ends: numbers('Ends', [0.5, 0.25, 0.5, 0.75]),
  },
  readsMaterial: false,
  derive({ ends: [fromX, fromY, toX, toY] }, { aspect }) {
    const [across, down] = [toX - fromX, (toY - fromY) / aspect]
    const length = Math.max(across * across + down * down, least * least)
    return [fromX, fromY, across / length, down / (length * aspect), 0, 0]
  },
  weight: (pixel, _material, k) => 1 - smoothstep(0, 1, (pixel[4] - k[0]) * k[2] + (pixel[5] - k[1]) * k[3]),
})
