// The demo roll: eight frames from an invented place, Heron Mere, as two converted cameras with various filters would have
// brought them home. Scenes are loaded only when a frame is made.
import type { Scene } from './paint/scene.ts'
import type { Shot } from './dng/dng-file.ts'
import type { Exposure } from './sensor/expose.ts'
import type { FilterName, SensorName } from './spectra.ts'

export interface RollFrame {
  /** Identity and, with `.dng`, file name. */
  readonly id: string
  readonly title: string
  readonly scene: () => Promise<Scene>
  readonly sensor: SensorName
  readonly filter: FilterName
  readonly seed: number
  /** Sun at about 11° elevation instead of a high one. */
  readonly lowSun?: boolean
  readonly exposure: Exposure
  readonly shot: Omit<Shot, 'description'>
}

const lens = 'Simulated 24-35 mm'

export const roll: readonly RollFrame[] = [
  {
    id: 'mere-01-meadow-720',
    title: 'Meadow with a lone tree',
    scene: async () => (await import('./scenes/meadow.ts')).meadow,
    sensor: 'A',
    filter: '720',
    seed: 101,
    exposure: { phase: 'RGGB', black: [512, 514, 511, 513], orientation: 1, iso: 100, exposureEv: 0.55 },
    shot: { lens, exposureTime: [1, 125], aperture: 8, focalLengthMm: 29, takenAt: '2024:06:08 10:42:16' },
  },
  {
    id: 'mere-02-lake-590',
    title: 'Lake shore with reeds',
    scene: async () => (await import('./scenes/lake.ts')).lake,
    sensor: 'A',
    filter: '590',
    seed: 102,
    exposure: { phase: 'GRBG', black: [512, 514, 511, 513], orientation: 1, iso: 100, exposureEv: 0.45 },
    shot: { lens, exposureTime: [1, 160], aperture: 8, focalLengthMm: 28, takenAt: '2024:06:08 11:31:40' },
  },
  {
    id: 'mere-03-barn-665',
    title: 'Farm track under overcast',
    scene: async () => (await import('./scenes/barn.ts')).barn,
    sensor: 'B',
    filter: '665',
    seed: 103,
    exposure: { phase: 'GBRG', black: [255, 258, 257, 256], orientation: 1, iso: 200, exposureEv: 0.45 },
    shot: { lens, exposureTime: [1, 60], aperture: 9, focalLengthMm: 28, takenAt: '2024:09:21 15:05:12' },
  },
  {
    id: 'mere-04-woodland-720',
    title: 'In the woodland',
    scene: async () => (await import('./scenes/woodland.ts')).woodland,
    sensor: 'B',
    filter: '720',
    seed: 104,
    exposure: { phase: 'BGGR', black: [255, 258, 257, 256], orientation: 8, iso: 800, exposureEv: 1.3 },
    shot: { lens, exposureTime: [1, 40], aperture: 5.6, focalLengthMm: 30, takenAt: '2024:07:14 09:18:55' },
  },
  {
    id: 'mere-05-courtyard-590',
    title: 'Courtyard, half in shade',
    scene: async () => (await import('./scenes/courtyard.ts')).courtyard,
    sensor: 'A',
    filter: '590',
    seed: 105,
    exposure: { phase: 'BGGR', black: [512, 514, 511, 513], orientation: 1, iso: 100, exposureEv: 0.25 },
    shot: { lens, exposureTime: [1, 125], aperture: 8, focalLengthMm: 24, takenAt: '2024:07:13 16:20:03' },
  },
  {
    id: 'mere-06-dunes-850',
    title: 'Dunes in low sun',
    scene: async () => (await import('./scenes/dunes.ts')).dunes,
    sensor: 'A',
    filter: '850',
    seed: 106,
    lowSun: true,
    exposure: {
      phase: 'GBRG',
      black: [512, 514, 511, 513],
      orientation: 1,
      iso: 100,
      exposureEv: 2.6,
      hotSpot: { gain: [1.16, 1.19, 1.21], radius: 0.24 },
    },
    shot: { lens, exposureTime: [1, 80], aperture: 11, focalLengthMm: 26, takenAt: '2024:08:02 19:48:27' },
  },
  {
    id: 'mere-07-garden-full',
    title: 'Garden without a filter',
    scene: async () => (await import('./scenes/garden.ts')).garden,
    sensor: 'B',
    filter: 'none',
    seed: 107,
    exposure: { phase: 'GRBG', black: [255, 258, 257, 256], orientation: 1, iso: 200, exposureEv: 0.6 },
    shot: { lens, exposureTime: [1, 250], aperture: 7.1, focalLengthMm: 32, takenAt: '2024:07:13 11:02:33' },
  },
  {
    id: 'mere-08-coast-590',
    title: 'Coast with surf',
    scene: async () => (await import('./scenes/coast.ts')).coast,
    sensor: 'B',
    filter: '590',
    seed: 108,
    exposure: { phase: 'RGGB', black: [255, 258, 257, 256], orientation: 1, iso: 200, exposureEv: 0.5 },
    shot: { lens, exposureTime: [1, 320], aperture: 8, focalLengthMm: 27, takenAt: '2024:08:03 10:11:48' },
  },
]

/** The frame whose id is or contains `name`. Throws an `Error` that lists the ids when there is none. */
export function findFrame(name: string): RollFrame {
  const frame = roll.find((f) => f.id === name) ?? roll.find((f) => f.id.includes(name))
  if (!frame) throw new Error(`No demo frame is called "${name}". The frames are ${roll.map((f) => f.id).join(', ')}.`)
  return frame
}
