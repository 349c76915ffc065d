// What the camera wrote about an exposure, and real files beside what an outside reader says of them.
import { existsSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { beforeAll, describe, expect, it } from 'vitest'
import { decodeFrame } from '../../src/decode/decode-frame.ts'
import { exposureMetadata } from '../../src/decode/exposure-metadata.ts'
import type { LibRaw, LibRawMetadata } from '../../src/decode/libraw.ts'
import { startLibRawInNode } from '../../src/decode/libraw-in-node.ts'
import { transform } from '../../src/math/mat3.ts'
import { hasTool, readMetadata } from '../support/outside-tools.ts'
import { writeDng } from '../support/synthetic-dng.ts'
import { bayer } from '../support/synthetic-sensor.ts'
import { tinyJpeg } from '../support/tiny-jpeg.ts'

let libraw: LibRaw
beforeAll(async () => {
  libraw = await startLibRawInNode()
})
const real = (name: string) => new URL(`../../../shared/data/raw/${name}`, import.meta.url)
const dng = { width: 32, height: 24, codes: new Uint16Array(32 * 24).fill(900), cfa: bayer, preview: tinyJpeg }

it('tags of the file come before the decoder’s own names for cameras', async () => {
  const bytes = writeDng({
    ...dng,
    tags: [
      [271, 2, 'Willow Works'],
      [272, 2, 'Willow 3'],
      [306, 2, '2024:02:29 23:59:58'],
      [315, 2, 'A. Heron'],
      [33432, 2, 'Reed Bank'],
    ],
  })
  const { metadata } = await decodeFrame(libraw, { fileName: 'a.dng', bytes })
  expect(metadata).toEqual({
    make: 'Willow Works',
    model: 'Willow 3',
    takenAt: '2024:02:29 23:59:58',
    artist: 'A. Heron',
    copyright: 'Reed Bank',
  })
})

it('the camera matrix turns its own white into D65; none is null', async () => {
  const { facts } = await decodeFrame(libraw, { fileName: 'a.dng', bytes: writeDng(dng) })
  const white = [0, 3, 6].map((row) => facts.cameraToXyz!.slice(row, row + 3).reduce((a, b) => a + b))
  // D65 as XYZ: x .3127, y .3290 (IEC 61966-2-1).
  expect(white).toEqual([0.3127 / 0.329, 1, 0.3583 / 0.329].map((value) => expect.closeTo(value, 3)))
  const mono = await decodeFrame(libraw, { fileName: 'a.dng', bytes: writeDng({ ...dng, cfa: undefined }) })
  expect(mono.facts.cameraToXyz).toBeNull()
})

it('daylight through the camera’s own glass is what its matrix makes of D65', async () => {
  // DNG Specification 1.7, chapter 6: camera = colour matrix · XYZ; the file’s illuminant 21 is D65.
  const matrix = [1.4762, -0.5132, -0.1769, -0.593, 1.3853, 0.1638, -0.0521, 0.0894, 0.5497]
  const bytes = writeDng({ ...dng, tags: [[50721, 10, matrix]] })
  const { facts } = await decodeFrame(libraw, { fileName: 'a.dng', bytes })
  const [red, green, blue] = transform(matrix, [0.3127 / 0.329, 1, 0.3583 / 0.329])
  const expected = [Math.log2(red / green), Math.log2(blue / green)]
  expect(facts.daylightNeutral).toEqual(expected.map((stops) => expect.closeTo(stops, 2)))
})

it('the embedded preview comes first and carries the orientation of the file', async () => {
  const previews: Uint8Array[] = []
  const bytes = writeDng({ ...dng, orientation: 8 })
  await decodeFrame(libraw, { fileName: 'a.dng', bytes, onPreview: (jpeg) => previews.push(jpeg) })
  expect(previews).toHaveLength(1)
  const [jpeg] = previews
  // EXIF 2.3: APP1 first; entry of tag 274, type short, one value, little-endian.
  expect(Array.from(jpeg.subarray(0, 4))).toEqual([0xff, 0xd8, 0xff, 0xe1])
  expect(Buffer.from(jpeg).includes(Buffer.from([0x12, 1, 3, 0, 1, 0, 0, 0, 8, 0]))).toBe(true)
})

describe('what only the decoder tells', () => {
  const blank: LibRawMetadata = {
    ...({} as LibRawMetadata),
    camera_make: 'Willow',
    camera_model: '3',
    iso_speed: 0,
    shutter: 0.004,
    aperture: 8,
    focal_len: Infinity,
    timestamp: 0,
    desc: ' ',
    artist: '',
    lens: { Lens: '', makernotes: { Lens: 'Reed 28 mm' } },
    gps_data: {
      latitude: [51, 30, 36],
      longitude: [0, 7, 12],
      altitude: 40,
      latref: 'S',
      longref: 'W',
      altref: 1,
      gpsparsed: true,
    },
  }
  it('absent and impossible fields are left out; places have signs', () => {
    const { gps, ...rest } = exposureMetadata(blank, [])
    expect(rest).toEqual({ make: 'Willow', model: '3', exposureTimeS: 0.004, apertureF: 8, lens: 'Reed 28 mm' })
    expect(gps).toEqual({ latitudeDeg: -51.51, longitudeDeg: expect.closeTo(-0.12, 10), altitudeM: -40 })
  })

  it('no place without its hemispheres', () => {
    const gps_data = { ...blank.gps_data, latref: null }
    expect(exposureMetadata({ ...blank, gps_data }, []).gps).toBeUndefined()
  })

  it('local time is the camera’s, whatever zone this machine is in', () => {
    // The decoder makes its number with this machine's zone, as Date does here.
    const timestamp = new Date(1997, 3, 23, 8, 0, 47).getTime() / 1000
    expect(exposureMetadata({ ...blank, timestamp }, []).takenAt).toBe('1997:04:23 08:00:47')
  })
})

describe('real files', () => {
  const kdc = real('dc50.kdc')
  it.skipIf(!existsSync(kdc) || !hasTool('exiftool'))(
    'as exiftool reads them (skipped without file or tool)',
    async () => {
      const bytes = Uint8Array.from(readFileSync(kdc))
      const { metadata } = await decodeFrame(libraw, { fileName: 'dc50.kdc', bytes })
      const said = readMetadata(fileURLToPath(kdc))
      expect(metadata).toMatchObject({
        make: said['IFD0:Make'],
        model: said['IFD0:Model'],
        takenAt: said['IFD0:ModifyDate'],
        copyright: said['IFD0:Copyright'],
        exposureTimeS: expect.closeTo(Number(said['IFD0:ExposureTime']), 5),
        apertureF: expect.closeTo(Number(said['IFD0:FNumber']), 5),
        focalLengthMm: said['IFD0:FocalLength'],
      })
    },
  )
})
