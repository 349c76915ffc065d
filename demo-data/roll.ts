// The demo roll: eight frames from an invented place, Heron Mere, as two converted cameras with various filters would have
// brought them home. Scenes are loaded only when a frame is made.
import type { Scene } from './paint/scene.ts'
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
}

export const roll: readonly RollFrame[] = [
  {
    id: 'mere-01-meadow-720',
    title: 'Meadow with a lone tree',
    scene: async () => (await import('./scenes/meadow.ts')).meadow,
    sensor: 'A',
    filter: '720',
    seed: 101,
  },
  {
    id: 'mere-02-lake-590',
    title: 'Lake shore with reeds',
    scene: async () => (await import('./scenes/lake.ts')).lake,
    sensor: 'A',
    filter: '590',
    seed: 102,
  },
  {
    id: 'mere-03-barn-665',
    title: 'Farm track under overcast',
    scene: async () => (await import('./scenes/barn.ts')).barn,
    sensor: 'B',
    filter: '665',
    seed: 103,
  },
  {
    id: 'mere-04-woodland-720',
    title: 'In the woodland',
    scene: async () => (await import('./scenes/woodland.ts')).woodland,
    sensor: 'B',
    filter: '720',
    seed: 104,
  },
  {
    id: 'mere-05-courtyard-590',
    title: 'Courtyard, half in shade',
    scene: async () => (await import('./scenes/courtyard.ts')).courtyard,
    sensor: 'A',
    filter: '590',
    seed: 105,
  },
  {
    id: 'mere-06-dunes-850',
    title: 'Dunes in low sun',
    scene: async () => (await import('./scenes/dunes.ts')).dunes,
    sensor: 'A',
    filter: '850',
    seed: 106,
    lowSun: true,
  },
  {
    id: 'mere-07-garden-full',
    title: 'Garden without a filter',
    scene: async () => (await import('./scenes/garden.ts')).garden,
    sensor: 'B',
    filter: 'none',
    seed: 107,
  },
  {
    id: 'mere-08-coast-590',
    title: 'Coast with surf',
    scene: async () => (await import('./scenes/coast.ts')).coast,
    sensor: 'B',
    filter: '590',
    seed: 108,
  },
]

/** The frame whose id is or contains `name`. Throws an `Error` that lists the ids when there is none. */
export function findFrame(name: string): RollFrame {
  const frame = roll.find((f) => f.id === name) ?? roll.find((f) => f.id.includes(name))
  if (!frame) throw new Error(`No demo frame is called "${name}". The frames are ${roll.map((f) => f.id).join(', ')}.`)
  return frame
}
