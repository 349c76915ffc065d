// Reads what a raw decoder of the outside world makes of a file of the demo roll.
import { readFileSync } from 'node:fs'
import { say } from '../support/outside-tools.ts'

export interface LinearPicture {
  readonly width: number
  readonly height: number
  /** (code − black) ÷ (white − black) × 65535, RGB interleaved, upright. */
  readonly rgb: Uint16Array
}

/** Decodes with dcraw_emu at half size: linear, no balance, no colour conversion, one pixel per filter cell. */
export function decodeHalfSize(path: string): LinearPicture {
  say('dcraw_emu', ['-h', '-4', '-o', '0', '-r', '1', '1', '1', '1', '-W', '-c', '0', path])
  const file = readFileSync(`${path}.ppm`)
  const [, width, height] = /^P6\s+(\d+)\s+(\d+)\s+65535\s/.exec(file.toString('latin1', 0, 64))!.map(Number)
  const rgb = Uint16Array.from({ length: width * height * 3 }, (_, i) =>
    file.readUInt16BE(file.length - (width * height * 3 - i) * 2),
  )
  return { width, height, rgb }
}

/** Every code of the mosaic as unprocessed_raw finds it, borders included. */
export function readCodes(path: string, count: number): Uint16Array {
  say('unprocessed_raw', ['-T', path])
  const file = readFileSync(`${path}.tiff`)
  return Uint16Array.from({ length: count }, (_, i) => file.readUInt16LE(file.length - (count - i) * 2))
}
