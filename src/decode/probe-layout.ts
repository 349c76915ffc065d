// The layout of a mosaic that no tag tells: a corner of it is asked for with black subtracted and compared with the raw
// codes. In such a corner exactly one channel of a pixel is above 0: that is the photosite's colour, and black is the
// difference. A photosite that is as dark as black tells nothing, so other places follow where one leaves gaps. Of 6×6 arrays
// the decoder subtracts only what is common to all places, so a difference of a code or two between them is not found.
import type { CfaColour } from '../frame/frame.ts'
import { cfaFromFilters, makeTable, moveOrigin, type RepeatingTable, shrinkTable } from '../sensor/cfa.ts'
import { swapsSides } from '../sensor/orientation.ts'
import type { Rectangle } from '../sensor/rectangle.ts'
import type { LibRawImage, LibRawMetadata, LibRawMosaic, LibRawSettings } from './libraw.ts'
import { type OpenedFile, orientationOf, type RawSource, withOpenedFile } from './opened-file.ts'
import { cropWithin, type MosaicLayout } from './sensor-layout.ts'

/** Side of the corner, and the period that all patterns in it are looked for: a multiple of 2 and 6. */
const side = 48
const period = 6
/** `filters` of a 6×6 array. */
const sixBySixFilters = 9

/** Settings that leave codes as they are but for black: all are stated, because some have other defaults than none. */
export const plainSettings: LibRawSettings = {
  noInterpolation: true,
  noAutoScale: true,
  outputColor: 0,
  outputBps: 16,
  gamm: [1, 1, 1, 1, 0, 0],
  noAutoBright: true,
  adjustMaximumThr: 0,
  userMul: [1, 1, 1, 1],
  useCameraWb: false,
  userFlip: 0,
  halfSize: false,
  highlight: 0,
  bright: 1,
}

/** Settings that also cut out the corner at (x, y) of the visible area. */
export function probeSettings(x: number, y: number): LibRawSettings {
  return { ...plainSettings, cropbox: [x, y, side, side] }
}

/** Corners to try: the first, then places spread over the picture, at multiples of the period. */
function probePlaces(width: number, height: number): [x: number, y: number][] {
  const at = (share: number, length: number) => Math.max(0, Math.floor(((length - side) * share) / period) * period)
  return [
    [0, 0],
    [0.5, 0.5],
    [0.25, 0.75],
    [0.75, 0.25],
  ].map(([x, y]) => [at(x, width), at(y, height)])
}

export interface ProbedMosaic {
  readonly mosaic: LibRawMosaic
  readonly layout: MosaicLayout
  readonly warnings: readonly string[]
}

/** What corners have told so far, by place in a 6×6 period of the visible area; undefined where nothing is known. */
interface Findings {
  readonly colours: (CfaColour | undefined)[]
  readonly black: (number | undefined)[]
  /** A corner contradicted another: the codes are no plain mosaic. */
  readonly contradicted: boolean
}

const noFindings: Findings = { colours: [], black: [], contradicted: false }

/** Adds what the corner at (`left`, `top`) of the stored codes tells. */
function addFindings(
  findings: Findings,
  corner: LibRawImage,
  mosaic: LibRawMosaic,
  left: number,
  top: number,
): Findings {
  const colours = [...findings.colours]
  const black = [...findings.black]
  let { contradicted } = findings
  for (let row = 0, from = 0; row < corner.height; row++) {
    for (let column = 0; column < corner.width; column++, from += corner.colors) {
      const channels = corner.data.subarray(from, from + corner.colors)
      const channel = channels.findIndex((value) => value > 0)
      if (channel < 0) continue
      const code = mosaic.data[(top + row) * mosaic.raw_width + left + column]
      const place = (row % period) * period + (column % period)
      const colour = channel === 3 ? 1 : (channel as CfaColour)
      const level = code - channels[channel]
      contradicted ||= channels.filter((value) => value > 0).length > 1
      contradicted ||= (colours[place] ?? colour) !== colour || (black[place] ?? level) !== level
      colours[place] = colour
      black[place] = level
    }
  }
  return { colours, black, contradicted }
}

/** A 6×6 period with the gaps filled from the same place of a 2×2 pattern, or null while some are left. */
function complete<T>(found: readonly (T | undefined)[], evenly: boolean): RepeatingTable<T> | null {
  const table = makeTable(period, period, (x, y) => {
    const places = Array.from({ length: period * period }, (_, i) => i)
    const alike = places.filter((i) => (i % period) % 2 === x % 2 && Math.floor(i / period) % 2 === y % 2)
    return (
      found[y * period + x] ?? (evenly ? alike.map((i) => found[i]).find((value) => value !== undefined) : undefined)
    )
  })
  return table.entries.includes(undefined) ? null : (table as RepeatingTable<T>)
}

/** The visible area within the stored codes. `metadata` is of before unpacking: a crop changes it. */
function visibleArea(metadata: LibRawMetadata): Rectangle {
  const { left_margin: x, top_margin: y, width, height } = metadata
  return swapsSides(orientationOf(metadata)) ? { x, y, width: height, height: width } : { x, y, width, height }
}

/** The layout that the findings make of the visible area, or null where they do not yet; white as read after unpacking. */
function probedLayout(findings: Findings, metadata: LibRawMetadata, maximum: number): MosaicLayout | null {
  const sixBySix = metadata.filters === sixBySixFilters
  const black = complete(findings.black, !sixBySix)
  const colours = sixBySix ? complete(findings.colours, false) : coloursOf(metadata)
  if (!black || !colours) return null
  const visible = visibleArea(metadata)
  const { x, y } = visible
  const [{ cleft, ctop, cwidth, cheight }] = metadata.raw_inset_crops
  return {
    // The crop counts from the first stored code; without one its corner lies far outside.
    area: cropWithin(visible, { x: cleft - x, y: ctop - y, width: cwidth, height: cheight }),
    colours: moveOrigin(shrinkTable(colours), -x, -y),
    black: moveOrigin(shrinkTable(black), -x, -y),
    white: maximum + Math.min(...black.entries),
  }
}

function coloursOf({ filters }: LibRawMetadata): RepeatingTable<CfaColour> {
  if (filters === 0) return makeTable(1, 1, () => 1 as const)
  const { columns, rows, colours } = cfaFromFilters(filters)
  return { columns, rows, entries: colours }
}

/**
 * Mosaic and layout of a file that was opened with the settings of the first place, or null where it has no plain
 * mosaic. Where every place is dark, black is what the metadata say, with a warning.
 */
export function probeMosaic(source: RawSource, { file, metadata }: OpenedFile): ProbedMosaic | null {
  // The image has to come before the mosaic.
  const first = file.imageData()
  const mosaic = first && file.rawImageData()
  if (!mosaic) return null
  const { black: statedBlack, maximum } = file.metadata(true).color_data
  const visible = visibleArea(metadata)
  let findings = noFindings
  for (const [i, [x, y]] of probePlaces(visible.width, visible.height).entries()) {
    const corner =
      i === 0 ? first : withOpenedFile(source, probeSettings(x, y), ({ file: another }) => another.imageData())
    if (corner) findings = addFindings(findings, corner, mosaic, visible.x + x, visible.y + y)
    if (findings.contradicted) return null
    const layout = probedLayout(findings, metadata, maximum)
    if (layout) return { mosaic, layout, warnings: [] }
  }
  const black = Array.from({ length: period * period }, (_, i) => findings.black[i] ?? statedBlack)
  const layout = probedLayout({ ...findings, black }, metadata, maximum)
  return layout && { mosaic, layout, warnings: ['The picture is too dark to tell black for every photosite.'] }
}
