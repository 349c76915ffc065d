// Which places of a frame can be sky: as red as its reddest smooth places, or joined to such by places as smooth. Shaded stone lies
// in sky's own light and has nearly its colour; what parts them is that stone has texture and edges.
import { smoothstep } from '../math/smoothstep.ts'
import { boxSums } from './box-sums.ts'

/**
 * A place begins sky where everything within so many overview pixels varies by less than this, in stops, and is as red as this share
 * of the frame’s sky. These and the next were tuned on the demo roll: lake, courtyard, coast and meadow behind 590 nm.
 */
const seedTexture = 0.05
const seedRadius = 2
const seedShare = 0.65
/** Texture in stops that ends sky, and the least share of its colour: haze and thin cloud stay, edges of leaves and rock do not. */
const edgeTexture = 0.4
const leastShare = 0.25
/** Share of smooth places that are redder than what counts as the frame’s sky. */
const redderShare = 0.02
/** Overview pixels by which an edge seems wider than it is: the texture’s window and as much again. */
const reach = 4
/** What clear sky measures at most behind 590 nm, in stops, and the most that a sensor which parts colours less is lifted. */
const widestSky = 0.6
const mostLift = 1.6
/** Where the reddest places come to count as sky, in stops: what is redder than shade makes of grey. */
const skyFrom = 0.25
const skySurely = 0.35

export interface SkyPlaces {
  /** 0 … 1 how far a place can be sky. */
  readonly share: Float32Array
  /** What stops against grey are to be multiplied by, so that this frame’s sky counts as any other’s: 1 … 1.6. */
  readonly lift: number
}

/** log2 R/B against grey of the frame’s sky, or of what is reddest where it shows none. */
function skyStops(stops: Float32Array, texture: Float32Array): number {
  const smooth = stops.filter((_, i) => texture[i] < seedTexture).sort()
  return smooth.length ? smooth[Math.floor((1 - redderShare) * (smooth.length - 1))] : 0
}

/** 1 for all that is joined, side by side, to a seed through what may belong. */
function joined(isSeed: (i: number) => boolean, belongs: (i: number) => boolean, width: number, cells: number) {
  const found = new Float32Array(cells)
  const waiting: number[] = []
  const take = (i: number) => {
    if (found[i]) return
    found[i] = 1
    waiting.push(i)
  }
  for (let i = 0; i < cells; i++) if (isSeed(i)) take(i)
  for (let i = waiting.pop(); i !== undefined; i = waiting.pop()) {
    const x = i % width
    if (x > 0 && belongs(i - 1)) take(i - 1)
    if (x < width - 1 && belongs(i + 1)) take(i + 1)
    if (i >= width && belongs(i - width)) take(i - width)
    if (i < cells - width && belongs(i + width)) take(i + width)
  }
  return found
}

/**
 * On the way from shade to the frame’s sky, where sky begins and what still belongs to it; and how much brighter than shade, in stops,
 * haze is that has its colour. Tuned on simulated scenes behind 590 nm: where sky was told by the colour of the whole frame alone,
 * smooth walls in shade went with it.
 */
const beginsOfWay = 0.25
const belongsOfWay = 0.12
/** Least way in stops that counts: where a frame shows no sky, what is reddest is hardly redder than its shade. */
const leastWay = 0.4
const hazeAboveShade = 1

/** A shade that sky is to be told from: its log2 R/B against grey, and by how much each place is brighter, in stops. */
export interface KnownShade {
  readonly stops: number
  readonly brighter: Float32Array
}

/** Told from log2 R/B against grey and the texture of every place, both in stops, row by row; where shade is known, sky lies beyond it. */
export function skyPlaces(
  stops: Float32Array,
  texture: Float32Array,
  width: number,
  height: number,
  shade?: KnownShade,
): SkyPlaces {
  const sky = skyStops(stops, texture)
  const way = shade ? Math.max(sky - shade.stops, leastWay) : 0
  const isSky = (i: number, ofFrame: number, ofWay: number) =>
    stops[i] > Math.max(ofFrame * sky, 0) && (!shade || stops[i] > shade.stops + ofWay * way)
  const isHaze = (i: number) =>
    shade !== undefined && stops[i] > Math.max(leastShare * sky, 0) && shade.brighter[i] > hazeAboveShade
  const uneven = texture.map((value) => (value < seedTexture ? 0 : 1))
  const unevenNear = boxSums(uneven, width, height, seedRadius)
  const found = joined(
    (i) => unevenNear[i] < 0.5 && isSky(i, seedShare, beginsOfWay),
    (i) => texture[i] < edgeTexture && (isSky(i, leastShare, belongsOfWay) || isHaze(i)),
    width,
    stops.length,
  )
  const reached = boxSums(found, width, height, reach).map((sum) => (sum > 0.5 ? 1 : 0))
  const counts = boxSums(new Float32Array(stops.length).fill(1), width, height, 1)
  const share = boxSums(reached, width, height, 1).map((sum, i) => sum / counts[i])
  const wanted = Math.min(Math.max(widestSky / sky, 1), mostLift)
  const lift = sky > skyFrom ? 1 + (wanted - 1) * smoothstep(skyFrom, skySurely, sky) : 1
  return { share, lift }
}

/** Shares of sky without all that is joined to a place (x and y, 0…1) which is known to be something else. */
export function skyWithout(
  share: Float32Array,
  width: number,
  height: number,
  [x, y]: readonly [x: number, y: number],
): Float32Array {
  const cell = (at: number, count: number) => Math.min(Math.floor(at * count), count - 1)
  const known = cell(y, height) * width + cell(x, width)
  const taken = joined(
    (i) => i === known,
    (i) => share[i] > 0,
    width,
    share.length,
  )
  return share.map((value, i) => (taken[i] ? 0 : value))
}
