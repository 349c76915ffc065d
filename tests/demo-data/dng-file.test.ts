// The demo roll's raw files held against tools of the outside world: exiftool for structure and metadata, LibRaw's samples
// for levels, filter pattern and orientation.
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { type Mosaic, writeDng } from '../../demo-data/dng/dng-file.ts'
import { bodies, type CfaPhase } from '../../demo-data/sensor/body.ts'
import type { Exposure } from '../../demo-data/sensor/expose.ts'
import { type Orientation, sensorColumn, sensorRow, sensorSize } from '../../demo-data/sensor/orientation.ts'
import { hasTool, readMetadata, say, structureFaults } from '../support/outside-tools.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'
import { decodeHalfSize, readCodes } from './raw-picture.ts'

const folder = temporaryFolder()
const upright = { width: 96, height: 64 }
const shares = [0.8, 0.4, 0.2]
const shot = {
  description: 'Test patch',
  lens: 'Test lens',
  exposureTime: [1, 125],
  aperture: 8,
  focalLengthMm: 29,
  takenAt: '2024:06:08 10:42:16',
} as const

/** A patch whose upright upper left quarter is four times brighter than the rest. */
function patch(sensor: 'A' | 'B', exposure: Exposure): Mosaic {
  const body = bodies[sensor]
  const { top, left } = body.border
  const picture = sensorSize(upright, exposure.orientation)
  const raw = { width: picture.width + left, height: picture.height + top }
  const codes = new Uint16Array(raw.width * raw.height).map((_, i) => {
    const [x, y] = [i % raw.width, Math.floor(i / raw.width)]
    return exposure.black[(y & 1) * 2 + (x & 1)]
  })
  for (let y = 0; y < upright.height; y++) {
    for (let x = 0; x < upright.width; x++) {
      const sx = sensorColumn(upright, exposure.orientation, x, y)
      const sy = sensorRow(upright, exposure.orientation, x, y)
      const place = (sy & 1) * 2 + (sx & 1)
      const bright = x < upright.width / 2 && y < upright.height / 2 ? 1 : 0.25
      const black = exposure.black[place]
      const share = shares['RGB'.indexOf(exposure.phase[place])] * bright
      codes[(sy + top) * raw.width + sx + left] = Math.round(black + share * (body.white - black))
    }
  }
  return { codes, raw, picture }
}

function write(name: string, sensor: 'A' | 'B', exposure: Exposure): { path: string; mosaic: Mosaic } {
  const mosaic = patch(sensor, exposure)
  const preview = { bytes: new Uint8Array([0xff, 0xd8, 0xff, 0xd9]), width: 8, height: 8 }
  const path = join(folder, name)
  writeFileSync(path, writeDng(mosaic, bodies[sensor], exposure, shot, preview))
  return { path, mosaic }
}

const common = { iso: 200, exposureEv: 0 }
const cases: [CfaPhase, Orientation, 'A' | 'B'][] = [
  ['RGGB', 1, 'A'],
  ['GRBG', 6, 'A'],
  ['GBRG', 8, 'B'],
  ['BGGR', 6, 'B'],
]

describe('raw files of the demo roll', () => {
  it.skipIf(!hasTool('exiftool'))('say what the camera did (skipped without exiftool)', () => {
    const { path } = write('tags.dng', 'A', { ...common, phase: 'GBRG', black: [512, 514, 511, 513], orientation: 6 })
    const tags = readMetadata(path)
    expect(structureFaults(path)).toEqual([])
    expect(tags['IFD0:Orientation']).toBe(6)
    expect(tags['SubIFD:CFAPattern2']).toBe('1 2 0 1')
    expect(tags['SubIFD:BlackLevel']).toBe('512 514 511 513')
    expect(tags['SubIFD:WhiteLevel']).toBe(bodies.A.white)
    expect(tags['SubIFD:ActiveArea']).toBe('16 32 112 96')
    expect(tags['ExifIFD:ExposureTime']).toBeCloseTo(1 / 125, 6)
    expect(tags['ExifIFD:FNumber']).toBe(8)
    expect(tags['ExifIFD:ISO']).toBe(200)
    expect(tags['ExifIFD:DateTimeOriginal']).toBe(shot.takenAt)
  })

  for (const [phase, orientation, sensor] of cases) {
    const black = sensor === 'A' ? ([512, 514, 511, 513] as const) : ([255, 258, 257, 256] as const)
    const exposure: Exposure = { ...common, phase, orientation, black }
    const name = `${phase}, orientation ${orientation}, sensor ${sensor}`
    it.skipIf(!hasTool('raw-identify'))(
      `carry filter pattern and black: ${name} (skipped without raw-identify)`,
      () => {
        const { path } = write(`${phase}.dng`, sensor, exposure)
        const said = say('raw-identify', ['-v', path])
        expect(said).toContain(`Filter pattern: ${phase}`)
        expect(said).toContain(`cblack[6 .. 9]: ${black.join(' ')}`)
      },
    )
    it.skipIf(!hasTool('unprocessed_raw'))(`keep every code: ${name} (skipped without unprocessed_raw)`, () => {
      const { path, mosaic } = write(`${phase}-codes.dng`, sensor, exposure)
      expect(readCodes(path, mosaic.codes.length)).toEqual(mosaic.codes)
    })
    it.skipIf(!hasTool('dcraw_emu'))(`decode upright to the painted light: ${name} (skipped without dcraw_emu)`, () => {
      const { path } = write(`${phase}-light.dng`, sensor, exposure)
      const { width, height, rgb } = decodeHalfSize(path)
      expect([width, height]).toEqual([upright.width / 2, upright.height / 2])
      const at = (x: number, y: number, c: number) => rgb[(y * width + x) * 3 + c] / 65535
      for (let c = 0; c < 3; c++) {
        expect(at(8, 8, c)).toBeCloseTo(shares[c], 2)
        expect(at(width - 8, 8, c)).toBeCloseTo(shares[c] / 4, 2)
        expect(at(8, height - 8, c)).toBeCloseTo(shares[c] / 4, 2)
      }
    })
  }
})
