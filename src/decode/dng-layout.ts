// The layout of a DNG file from its own tags (DNG 1.4, tag numbers beside them). The decoder exposes no per-position black
// and loses a pixel at odd origins of the active area; patterns count from the active area.
import type { CfaColour, NoiseModel } from '../frame/frame.ts'
import { makeTable, moveOrigin, type RepeatingTable } from '../sensor/cfa.ts'
import type { Rectangle } from '../sensor/rectangle.ts'
import { cropWithin, type LinearLayout, type MosaicLayout } from './sensor-layout.ts'
import type { TiffDirectory } from './tiff-directories.ts'

/** PhotometricInterpretation of raw pictures. */
const colourFilterArray = 32803
const linearRaw = 34892
/** White of floating-point files as the decoder makes them whole numbers, with black at 0 (found by trial). */
const floatWhite = 16383

/** The directory of the picture with these sizes, or undefined. */
export function findRawDirectory(
  directories: readonly TiffDirectory[],
  width: number,
  height: number,
): TiffDirectory | undefined {
  return directories.find(
    ({ numbers }) =>
      [colourFilterArray, linearRaw].includes(numbers(262)[0]) &&
      numbers(256)[0] === width &&
      numbers(257)[0] === height,
  )
}

/** ActiveArea (50829) and within it DefaultCropOrigin and DefaultCropSize (50719, 50720). */
function areasOf({ numbers }: TiffDirectory): { active: Rectangle; picture: Rectangle } {
  const [width] = numbers(256)
  const [height] = numbers(257)
  const [top, left, bottom, right] = numbers(50829)
  const whole = { x: 0, y: 0, width, height }
  const active =
    right > left ? cropWithin(whole, { x: left, y: top, width: right - left, height: bottom - top }) : whole
  const [x, y] = [...numbers(50719), 0, 0].map(Math.round)
  const [cropWidth, cropHeight] = numbers(50720).map(Math.round)
  return { active, picture: cropWidth ? cropWithin(active, { x, y, width: cropWidth, height: cropHeight }) : active }
}

/** WhiteLevel (50717), by default the largest code that BitsPerSample (258) holds. */
function whiteOf({ numbers }: TiffDirectory): number {
  const levels = numbers(50717)
  return levels.length ? Math.min(...levels) : 2 ** numbers(258)[0] - 1
}

const isFloat = ({ numbers }: TiffDirectory) => numbers(339)[0] === 3

/** BlackLevel (50714) of one channel, repeated as BlackLevelRepeatDim (50713) says, with the means of BlackLevelDeltaH and V. */
function blackOf({ numbers }: TiffDirectory, channel: number, channels: number): RepeatingTable<number> {
  const [rows, columns] = numbers(50713).length === 2 ? numbers(50713) : [1, 1]
  const levels = numbers(50714)
  const mean = (values: number[]) => (values.length ? values.reduce((a, b) => a + b) / values.length : 0)
  const delta = mean(numbers(50715)) + mean(numbers(50716))
  return makeTable(
    columns,
    rows,
    (x, y) => (levels[(y * columns + x) * channels + channel] ?? levels[channel] ?? 0) + delta,
  )
}

/** CFARepeatPatternDim (33421) and CFAPattern (33422); null for colours but red, green and blue and for rows that are staggered (CFALayout, 50711). */
function coloursOf({ numbers }: TiffDirectory): RepeatingTable<CfaColour> | null {
  if (numbers(262)[0] === linearRaw) return makeTable(1, 1, () => 1 as const)
  const [rows, columns] = numbers(33421)
  const entries = numbers(33422)
  if ((numbers(50711)[0] ?? 1) !== 1) return null
  if (!rows || !columns || entries.length !== rows * columns || entries.some((colour) => colour > 2)) return null
  return { columns, rows, entries: entries as CfaColour[] }
}

/** Layout of a mosaic or a one-channel picture; null where its colours are not understood. */
export function dngMosaicLayout(raw: TiffDirectory): MosaicLayout | null {
  const { active, picture } = areasOf(raw)
  const colours = coloursOf(raw)
  if (!colours) return null
  const black = isFloat(raw) ? makeTable(1, 1, () => 0) : blackOf(raw, 0, 1)
  return {
    area: picture,
    colours: moveOrigin(colours, -active.x, -active.y),
    black: moveOrigin(black, -active.x, -active.y),
    white: isFloat(raw) ? floatWhite : whiteOf(raw),
  }
}

/** Layout of three linear channels, of which the decoder gives the active area; black is the mean where it repeats. */
export function dngLinearLayout(raw: TiffDirectory, width: number, height: number): LinearLayout {
  const { active, picture } = areasOf(raw)
  const mean = ({ entries }: RepeatingTable<number>) => entries.reduce((a, b) => a + b) / entries.length
  const black = [0, 1, 2].map((channel) => (isFloat(raw) ? 0 : mean(blackOf(raw, channel, 3))))
  const local = { ...picture, x: picture.x - active.x, y: picture.y - active.y }
  return {
    area: cropWithin({ x: 0, y: 0, width, height }, local),
    black: black as [number, number, number],
    white: isFloat(raw) ? floatWhite : whiteOf(raw),
  }
}

/** OpcodeList1, 2 and 3. */
const opcodeLists = [51008, 51009, 51022]

/** What a DNG file asks for and does not get here, as sentences. */
export function dngWarnings(raw: TiffDirectory): string[] {
  const warnings: string[] = []
  if (opcodeLists.some(raw.has)) {
    warnings.push('The file asks for corrections of lens or sensor (an opcode list) that are not made here.')
  }
  if (raw.has(50715) || raw.has(50716)) {
    warnings.push('The file states black for single rows or columns; the mean of these corrections is used.')
  }
  return warnings
}

/** NoiseProfile (51041), found in either directory: variance = slope · value + offset, the first channel speaking for all. */
export function dngNoise(directories: readonly TiffDirectory[]): NoiseModel | null {
  const [slope, offset] = directories.map(({ numbers }) => numbers(51041)).find(({ length }) => length >= 2) ?? []
  if (!(slope > 0 && offset >= 0 && Number.isFinite(slope + offset))) return null
  return { fullScaleElectrons: 1 / slope, readNoiseElectrons: Math.sqrt(offset) / slope }
}
