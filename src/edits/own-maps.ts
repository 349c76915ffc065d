// The colour maps that come along, tuned by eye on the demo roll with the neutral that frames open with.
import { RED_BLUE_EXCHANGE } from '../colour/mix-matrices.ts'
import { hueBands, readBands, type HueBand, writeBands } from '../operations/hue-bands.ts'
import { operationById, type OperationId } from '../operations/index.ts'
import { readValues, type Values } from '../operations/values.ts'
import type { ColourMap, MapStep } from './colour-map.ts'

function step(id: OperationId, values: Values): MapStep {
  const operation = operationById(id as string)
  return { operation: id, version: operation.version, enabled: true, values: readValues(operation, values) }
}

const exchange = step('channelMix', { rows: RED_BLUE_EXCHANGE })
const turn = (angleDeg: number) => step('hueTurn', { angleDeg })
const strength = (strengthStops: number, noisePercent = 6) => step('colourStrength', { strengthStops, noisePercent })
const split = (redPercent: number, greenPercent: number, route: 'in-place' | 'film') =>
  step('infraredSplit', { redPercent, greenPercent, route })

/** Bands at these hues in place of the nearest plain ones; the rest stay as they come. */
function bands(...changes: readonly (Partial<HueBand> & { readonly hueDeg: number })[]): MapStep {
  const plain = readBands(hueBands.controls.bands.initial)
  const placed = changes.reduce<readonly HueBand[]>((soFar, change) => {
    const apart = soFar.map(({ hueDeg }) => Math.abs(((hueDeg - change.hueDeg + 540) % 360) - 180))
    const nearest = apart.indexOf(Math.min(...apart))
    return soFar.with(nearest, { ...soFar[nearest], ...change })
  }, plain)
  return step('hueBands', { bands: writeBands(placed) })
}

const map = (
  id: string,
  name: string,
  filterNm: ColourMap['filterNm'],
  words: string,
  ...steps: MapStep[]
): ColourMap => ({
  id: `own ${id}`,
  name,
  words,
  filterNm,
  steps,
})

const thirds = [1 / 3, 1 / 3, 1 / 3]

export const ownMaps: readonly ColourMap[] = [
  map('as-it-comes', 'As it comes', undefined, 'No mapping: the colours of the balanced sensor.'),
  map('exchanged', 'Exchanged', undefined, 'Red and blue change places, and nothing else.', exchange),
  map(
    'copper-shore',
    'Copper shore',
    550,
    'Copper leaves under a sky brought back from green to blue.',
    exchange,
    bands({ hueDeg: 45, strengthStops: 0.2 }, { hueDeg: 180, turnDeg: 55 }, { hueDeg: 215, turnDeg: 30 }),
  ),
  map(
    'first-frost',
    'First frost',
    590,
    'Leaves nearly white with a breath of gold, the sky a deep blue.',
    exchange,
    bands(
      { hueDeg: 55, strengthStops: -1.8, lightEv: 0.3 },
      { hueDeg: 85, strengthStops: -2, lightEv: 0.3 },
      { hueDeg: 230, turnDeg: 14, strengthStops: 0.8, lightEv: -0.3 },
      { hueDeg: 265, strengthStops: 0.8, lightEv: -0.3 },
    ),
  ),
  map(
    'straw-light',
    'Straw light',
    590,
    'Gold leaves and a clear blue sky: the exchange with both ends strengthened.',
    exchange,
    bands(
      { hueDeg: 78, strengthStops: 0.5, lightEv: 0.1 },
      { hueDeg: 230, turnDeg: 10, strengthStops: 0.9, lightEv: -0.1 },
      { hueDeg: 265, strengthStops: 0.6, lightEv: -0.1 },
    ),
  ),
  map(
    'rose-film',
    'Rose film',
    590,
    'Infrared as red and visible red as green: rose leaves against cool water and stone.',
    split(24, 50, 'film'),
    bands(
      { hueDeg: 355, turnDeg: 14, strengthStops: -0.3 },
      { hueDeg: 165, turnDeg: 62, strengthStops: -0.5 },
      { hueDeg: 200, turnDeg: 30 },
    ),
  ),
  map(
    'amber-hedge',
    'Amber hedge',
    630,
    'Amber leaves under a petrol sky.',
    exchange,
    bands(
      { hueDeg: 75, turnDeg: -14, strengthStops: 0.8 },
      { hueDeg: 235, turnDeg: -22, strengthStops: 1, lightEv: -0.1 },
    ),
  ),
  map(
    'pale-honey',
    'Pale honey',
    665,
    'Honey on leaves and dry grass, the sky a cool slate.',
    exchange,
    strength(1, 4),
    bands({ hueDeg: 80, lightEv: 0.2 }, { hueDeg: 245, strengthStops: -0.3, lightEv: -0.2 }),
  ),
  map(
    'violet-dusk',
    'Violet dusk',
    665,
    'All hues turned on until leaves are violet and skies are warm.',
    turn(85),
    strength(1.2, 4),
  ),
  map(
    'thin-ice',
    'Thin ice',
    695,
    'Cream leaves and an ice-blue sky drawn out of little colour.',
    exchange,
    strength(2),
    bands({ hueDeg: 60, strengthStops: -1.2 }, { hueDeg: 90, strengthStops: -1 }, { hueDeg: 225, turnDeg: 12 }),
  ),
  map(
    'chalk-and-sky',
    'Chalk and sky',
    720,
    'Chalk-pale leaves, and as blue a sky as the noise allows.',
    exchange,
    strength(3.4, 8),
    bands(
      { hueDeg: 30, strengthStops: -3 },
      { hueDeg: 60, strengthStops: -3, lightEv: 0.2 },
      { hueDeg: 95, strengthStops: -2, lightEv: 0.1 },
      { hueDeg: 225, turnDeg: 16 },
    ),
  ),
  map(
    'silver',
    'Silver',
    780,
    'Takes the last of the colour away, which behind long filters is the lens and the sensor rather than the scene.',
    step('channelMix', { rows: [...thirds, ...thirds, ...thirds] }),
  ),
  map(
    'open-door',
    'Open door',
    null,
    'Half of the camera’s colours for visible light, with infrared partly taken off: blue skies, pale leaves.',
    step('visibleMatrix', { amountPercent: 50 }),
    split(35, 35, 'in-place'),
  ),
  map(
    'rust-garden',
    'Rust garden',
    null,
    'Greens and yellows turn to rust, the sky stays blue.',
    strength(1),
    bands({ hueDeg: 110, turnDeg: -60 }, { hueDeg: 140, turnDeg: -80 }),
  ),
]
