// Second light: balanced `workingRgb` in and out, right behind the neutral. What lies in shade is turned from the main neutral
// to its own. It holds the difference of the two, not the second neutral itself: the step from sun to shade is the light's and
// stays the same when the main neutral moves to another material.
import glsl from '../../shaders/operations/second-light.glsl?raw'
import { planeAt } from '../math/plane-at.ts'
import { smoothstep } from '../math/smoothstep.ts'
import { choice, numbers, slider } from './controls.ts'
import { defineOperation, type Table } from './define.ts'
import { GUARD_FROM, GUARD_TO, meanLevel, openingNeutral } from './neutral.ts'

/** Stands in until the plane is made: nothing lies in shade. */
const noShade: Table = { kind: 'plane', width: 1, height: 1, data: new Float32Array(1) }

/** Name of the supply that tells how far each place lies in shade, 0 sun … 1 shade. */
export const shadePlane = (stepId: string) => `${stepId} shade`

export const secondLight = defineOperation({
  id: 'secondLight',
  version: 1,
  title: 'Second light',
  place: 'light',
  controls: {
    redStops: slider('Shade, red to green', 'stop', -1, 1, 0.01, 0),
    blueStops: slider('Shade, blue to green', 'stop', -1, 1, 0.01, 0),
    way: choice(
      'Shade is',
      [
        { value: 'found', label: 'Found' },
        { value: 'graduated', label: 'Graduated' },
      ],
      'found',
    ),
    /** Two picks of one kind of grey: x, y, log2 R/G, log2 B/G and log2 of red of `cameraRgb`; empty until picked. */
    sun: numbers('Pick in the sun', [], { variable: true }),
    shade: numbers('Pick in the shade', [], { variable: true }),
    /** x, y up to which all is sun, and x, y from which all is shade. */
    ends: numbers('Ends of the graduated passage', [0.3, 0.5, 0.7, 0.5]),
    /** As `strokesToNumbers` writes them. */
    strokes: numbers('Brush strokes', [], { variable: true }),
  },
  derive({ redStops, blueStops }, facts) {
    const [red, blue] = openingNeutral(facts)
    // The frame's mean stands for whatever lies in shade, as it stands for the frame when the neutral holds brightness.
    const hold = Math.log2(meanLevel(facts, red, blue) / meanLevel(facts, red + redStops, blue + blueStops))
    const holdStops = Number.isFinite(hold) ? hold : 0
    return {
      shiftStops: [redStops + holdStops, holdStops, blueStops + holdStops],
      guardFrom: GUARD_FROM,
      guardTo: GUARD_TO,
    }
  },
  reach: 'shade',
  tables: (_values, _facts, supplies, stepId) => ({ shade: supplies[shadePlane(stepId)] ?? noShade }),
  apply(pixel, k, { shade }) {
    const share = planeAt(shade, pixel[4], pixel[5]) * (1 - smoothstep(k.guardFrom, k.guardTo, pixel[3]))
    pixel[0] *= 2 ** (share * k.shiftStops[0])
    pixel[1] *= 2 ** (share * k.shiftStops[1])
    pixel[2] *= 2 ** (share * k.shiftStops[2])
  },
  glsl,
  tolerance: 1e-6,
})
