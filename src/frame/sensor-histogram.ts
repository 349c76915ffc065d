// What the sensor recorded, before any gain: exact counts of clipped and black photosites for each colour, and how each colour
// is spread over stops below saturation. Every photosite is counted once, while the frame opens.
import type { ChannelHistogram, LinearData, MosaicData, SensorData, SensorHistogram } from './frame.ts'
import { photositeTable } from './photosite-table.ts'

/** Stops below saturation that the histogram spans, and its bins in each (our choice: finer bins would show single codes). */
export const HISTOGRAM_STOPS = 10
const BINS_PER_STOP = 6
const CODES = 65536

/** Photosites of one kind: how many carry each code, which colour they are and what their codes mean. */
interface CodeCounts {
  readonly colour: number
  readonly counts: Uint32Array
  readonly black: number
  readonly white: number
}

/** Every row is read once; each of its photosites knows its kind by its place in the pattern. */
function countMosaic(mosaic: MosaicData): CodeCounts[] {
  const { codes, width, height, white } = mosaic
  const { columns, rows, colours, black } = photositeTable(mosaic)
  const kinds = new Map<string, CodeCounts>()
  const countsAt = colours.map((colour, entry) => {
    const key = `${colour} ${black[entry]}`
    const kind = kinds.get(key) ?? { colour, counts: new Uint32Array(CODES), black: black[entry], white }
    kinds.set(key, kind)
    return kind.counts
  })
  for (let y = 0; y < height; y++) {
    const row = countsAt.slice((y % rows) * columns, (y % rows) * columns + columns)
    const end = (y + 1) * width
    if (columns === 2) countPairs(codes, y * width, end, row[0], row[1])
    else for (let i = y * width, at = 0; i < end; i++, at = at + 1 === columns ? 0 : at + 1) row[at][codes[i]]++
  }
  return [...kinds.values()]
}

/** Counts the codes of a row in which two kinds of photosites alternate. */
function countPairs(codes: Uint16Array, from: number, end: number, even: Uint32Array, odd: Uint32Array): void {
  for (let i = from; i + 1 < end; i += 2) {
    even[codes[i]]++
    odd[codes[i + 1]]++
  }
  if ((end - from) % 2 === 1) even[codes[end - 1]]++
}

function countLinear({ codes, black, white }: LinearData): CodeCounts[] {
  return [0, 1, 2].map((colour) => {
    const counts = new Uint32Array(CODES)
    for (let i = colour; i < codes.length; i += 3) counts[codes[i]]++
    return { colour, counts, black: black[colour], white }
  })
}

/**
 * Spreads each code's count over the stops that the code stands for, half a code to either side: dark bins that are narrower
 * than a code would otherwise be empty and full in turn.
 */
function addToBins(bins: Float64Array, { counts, black, white }: CodeCounts): void {
  const last = bins.length - 1
  const binAt = (code: number) =>
    (Math.log2(Math.max(code - black, 0) / (white - black)) + HISTOGRAM_STOPS) * BINS_PER_STOP
  for (let code = Math.max(Math.floor(black) + 1, 0); code < CODES; code++) {
    if (counts[code] === 0) continue
    if (code >= white) {
      bins[last] += counts[code]
      continue
    }
    const [from, to] = [binAt(code - 0.5), binAt(code + 0.5)]
    for (let bin = Math.max(Math.floor(from), 0); bin <= last && bin < to; bin++) {
      bins[bin] += (counts[code] * (Math.min(to, bin + 1) - Math.max(from, bin))) / (to - from)
    }
  }
}

function sumOf(kinds: readonly CodeCounts[]): ChannelHistogram {
  const bins = new Float64Array(HISTOGRAM_STOPS * BINS_PER_STOP)
  let photosites = 0
  let clipped = 0
  let black = 0
  for (const kind of kinds) {
    for (let code = 0; code < CODES; code++) {
      photosites += kind.counts[code]
      if (code >= kind.white) clipped += kind.counts[code]
      if (code <= kind.black) black += kind.counts[code]
    }
    addToBins(bins, kind)
  }
  return { photosites, clipped, black, bins: [...bins] }
}

/** The histogram of upright sensor data. */
export function sensorHistogram(sensor: SensorData): SensorHistogram {
  const kinds = sensor.kind === 'linear' ? countLinear(sensor) : countMosaic(sensor)
  const colours = [...new Set(kinds.map(({ colour }) => colour))].sort()
  return colours.map((colour) => sumOf(kinds.filter((kind) => kind.colour === colour)))
}
