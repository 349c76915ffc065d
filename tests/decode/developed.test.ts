// JPEG and TIFF files as frames. Files come from libvips, libtiff's tiffcp and exiftool; pixels are held to those that libvips
// reads, words to exiftool's. Linear values are those of the sRGB curve (IEC 61966-2-1), worked out here.
import { copyFileSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { prepareNodeJpegDecoder } from '../../src/commands/node-jpeg.ts'
import { decodeFrame } from '../../src/decode/decode-frame.ts'
import type { LibRaw } from '../../src/decode/libraw.ts'
import { startLibRawInNode } from '../../src/decode/libraw-in-node.ts'
import { samplePatch } from '../../src/frame/sample-patch.ts'
import { size, slopes, vipsCodes, vipsPicture } from '../support/developed-files.ts'
import { hasTool, readMetadata, say } from '../support/outside-tools.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'

const folder = temporaryFolder()
const hasVips = hasTool('vips')
const path = (name: string) => join(folder, name)
const { width, height } = size

let libraw: LibRaw
beforeAll(async () => {
  await prepareNodeJpegDecoder()
  libraw = await startLibRawInNode()
})
const open = (name: string) => decodeFrame(libraw, { fileName: name, bytes: Uint8Array.from(readFileSync(path(name))) })

/** IEC 61966-2-1. */
const srgb = (share: number) => (share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4)
const linearCodes = (codes: Uint8Array | Uint16Array, most: number) =>
  Uint16Array.from(codes, (code) => Math.round(srgb(code / most) * 65535))

describe.skipIf(!hasVips)('pixels (skipped without vips)', () => {
  const rgb8 = () => vipsPicture(folder, 'rgb8', slopes(255), 3, 8)
  const rgb16 = () => vipsPicture(folder, 'rgb16', slopes(65535), 3, 16)

  it.each([
    ['plain', 8, []],
    ['lzw', 8, ['--compression', 'lzw', '--predictor', 'horizontal']],
    ['deflate', 8, ['--compression', 'deflate']],
    ['tiles', 8, ['--tile', '--tile-width', '32', '--tile-height', '32']],
    ['plain', 16, []],
    ['lzw', 16, ['--compression', 'lzw', '--predictor', 'horizontal']],
    ['tiles', 16, ['--tile', '--tile-width', '32', '--tile-height', '32', '--compression', 'deflate']],
  ] as const)('of a TIFF (%s, %i bits) are the linear codes to the last', async (kind, bits, words) => {
    const name = `${kind}${bits}.tif`
    say('vips', ['tiffsave', bits === 8 ? rgb8() : rgb16(), path(name), ...words])
    const { sensor, developed, warnings } = await open(name)
    expect(sensor).toMatchObject({ kind: 'linear', width, height, black: [0, 0, 0], white: 65535 })
    expect(sensor.codes).toEqual(linearCodes(vipsCodes(path(name), bits), 2 ** bits - 1))
    expect(developed).toEqual({ format: 'TIFF', bits, space: 'sRGB' })
    expect(warnings).toEqual(['The file names no colour space: its numbers are taken as sRGB.'])
  })

  it.skipIf(!hasTool('tiffcp')).each([
    ['planes apart', ['-p', 'separate', '-c', 'none']],
    ['packed bits', ['-c', 'packbits']],
    ['big-endian', ['-B', '-c', 'none']],
    ['row by row', ['-r', '1', '-c', 'lzw']],
  ])('of a TIFF from libtiff (%s) are the same (skipped without tiffcp)', async (kind, words) => {
    say('vips', ['tiffsave', rgb8(), path('from.tif')])
    say('tiffcp', [...words, path('from.tif'), path(`${kind}.tif`)])
    expect((await open(`${kind}.tif`)).sensor.codes).toEqual(linearCodes(Uint8Array.from(slopes(255)), 255))
  })

  it.each([
    ['baseline', []],
    ['progressive', ['--interlace']],
    ['4:4:4', ['--subsample-mode', 'off']],
  ])('of a JPEG (%s) are those of another decoder to 3 codes, half a code in the mean', async (kind, words) => {
    const name = `${kind.replaceAll(':', '')}.jpg`
    say('vips', ['jpegsave', rgb8(), path(name), '--Q', '92', ...words])
    const { sensor, developed } = await open(name)
    const codeOf = new Map(Array.from({ length: 256 }, (_, code) => [Math.round(srgb(code / 255) * 65535), code]))
    const apart = [...vipsCodes(path(name), 8)].map((code, i) => Math.abs(code - codeOf.get(sensor.codes[i])!))
    expect(Math.max(...apart)).toBeLessThanOrEqual(3)
    expect(apart.reduce((sum, one) => sum + one, 0) / apart.length).toBeLessThan(0.5)
    expect(developed).toEqual({ format: 'JPEG', bits: 8, space: 'sRGB' })
  })

  it.each(['grey.tif', 'grey.jpg'])('of grey (%s) become a sensor of one channel', async (name) => {
    const grey = vipsPicture(
      folder,
      'grey',
      slopes(255).filter((_, i) => i % 3 === 0),
      1,
      8,
    )
    say('vips', [name.endsWith('jpg') ? 'jpegsave' : 'tiffsave', grey, path(name)])
    const { sensor, facts } = await open(name)
    expect(sensor).toMatchObject({ kind: 'mosaic', cfa: { columns: 1, rows: 1, colours: [1] } })
    const expected = linearCodes(vipsCodes(path(name), 8), 255)
    expect(sensor.codes.every((code, i) => Math.abs(code - expected[i]) < 700)).toBe(true)
    expect(facts.cameraToXyz).toBeNull()
  })

  it('leave transparency out', async () => {
    const codes = slopes(255).flatMap((code, i) => (i % 3 === 2 ? [code, i % 2 ? 128 : 255] : [code]))
    say('vips', ['tiffsave', vipsPicture(folder, 'rgba', codes, 4, 8), path('alpha.tif')])
    const { sensor, warnings } = await open('alpha.tif')
    expect(sensor.codes).toEqual(linearCodes(Uint8Array.from(slopes(255)), 255))
    expect(warnings).toContain('Transparency in the file is left out.')
  })

  it.skipIf(!hasTool('tiffset'))(
    'are refused where transparency is mixed into them (skipped without tiffset)',
    async () => {
      const codes = slopes(255).flatMap((code, i) => (i % 3 === 2 ? [code, i % 2 ? 128 : 255] : [code]))
      say('vips', ['tiffsave', vipsPicture(folder, 'mixed', codes, 4, 8), path('mixed.tif')])
      say('tiffset', ['-s', '338', '1', '1', path('mixed.tif')])
      await expect(open('mixed.tif')).rejects.toThrow(
        /holds colours already mixed with transparency, which is not read/,
      )
    },
  )

  it.each([
    ['ink.jpg', 'jpegsave', 'printing inks (CMYK)'],
    ['ink.tif', 'tiffsave', 'printing inks (CMYK)'],
  ])('of printing inks are refused (%s)', async (name, save, what) => {
    const codes = slopes(255).flatMap((code, i) => (i % 3 === 2 ? [code, 40] : [code]))
    say('vips', ['copy', vipsPicture(folder, 'ink', codes, 4, 8), path('cmyk.v'), '--interpretation', 'cmyk'])
    say('vips', [save, path('cmyk.v'), path(name)])
    await expect(open(name)).rejects.toThrow(`“${name}” holds ${what}, which is not read here; save it in red, green`)
  })

  it('of a TIFF packed as JPEG are refused', async () => {
    say('vips', ['tiffsave', rgb8(), path('packed.tif'), '--compression', 'jpeg'])
    await expect(open('packed.tif')).rejects.toThrow(/“packed.tif” holds (luminance and chroma|a TIFF packed)/)
  })

  it('of files cut short are refused', async () => {
    say('vips', ['jpegsave', rgb8(), path('whole.jpg')])
    const bytes = Uint8Array.from(readFileSync(path('whole.jpg')))
    for (const share of [0.1, 0.5, 0.95]) {
      const cut = { fileName: 'cut.jpg', bytes: bytes.slice(0, bytes.length * share) }
      await expect(decodeFrame(libraw, cut)).rejects.toThrow('“cut.jpg” ends before its picture does')
    }
    await expect(decodeFrame(libraw, { fileName: 'whole.jpg', bytes })).resolves.toBeDefined()
  })
})

describe.skipIf(!hasVips || !hasTool('exiftool'))('words of the camera (skipped without vips and exiftool)', () => {
  const tags = {
    Make: 'Made-up',
    Model: 'Pocket Two',
    LensModel: '7-21 mm',
    ISO: '160',
    ExposureTime: '1/125',
    FNumber: '5.6',
    FocalLength: '14.2',
    DateTimeOriginal: '2024:06:08 11:31:05',
    Artist: 'A. Nobody',
    GPSLatitude: '12.5',
    GPSLatitudeRef: 'S',
    GPSLongitude: '140.25',
    GPSLongitudeRef: 'E',
    GPSAltitude: '31.5',
  }
  const write = (name: string, more: readonly string[] = []) =>
    say('exiftool', [...Object.entries(tags).map(([tag, value]) => `-${tag}=${value}`), ...more, path(name)])

  it.each(['words.jpg', 'words.tif'])('are those that exiftool reads (%s)', async (name) => {
    const picture = vipsPicture(folder, 'words', slopes(255), 3, 8)
    say('vips', [name.endsWith('jpg') ? 'jpegsave' : 'tiffsave', picture, path(name)])
    write(name)
    const read = readMetadata(path(name))
    const { metadata } = await open(name)
    expect(metadata).toMatchObject({
      make: read['IFD0:Make'],
      model: read['IFD0:Model'],
      lens: read['ExifIFD:LensModel'],
      iso: read['ExifIFD:ISO'],
      takenAt: read['ExifIFD:DateTimeOriginal'],
      artist: read['IFD0:Artist'],
    })
    expect(metadata.exposureTimeS).toBeCloseTo(Number(read['ExifIFD:ExposureTime']), 6)
    expect(metadata.apertureF).toBeCloseTo(Number(read['ExifIFD:FNumber']), 6)
    expect(metadata.gps!.latitudeDeg).toBeCloseTo(-12.5, 6)
    expect(metadata.gps!.longitudeDeg).toBeCloseTo(140.25, 6)
    expect(metadata.gps!.altitudeM).toBeCloseTo(31.5, 6)
  })

  it.each([2, 3, 4, 5, 6, 7, 8])('turn the picture upright (orientation %i) as vips does', async (orientation) => {
    const name = `turned${orientation}.tif`
    say('vips', ['tiffsave', vipsPicture(folder, 'turned', slopes(255), 3, 8), path(name)])
    say('exiftool', ['-n', `-Orientation=${orientation}`, path(name)])
    say('vips', ['autorot', path(name), path(`${name}.v`)])
    const { sensor } = await open(name)
    expect([sensor.width, sensor.height]).toEqual(orientation > 4 ? [height, width] : [width, height])
    expect(sensor.codes).toEqual(linearCodes(vipsCodes(path(`${name}.v`), 8), 255))
  })

  it('name the space: a profile, EXIF’s own statement, or the optional space of cameras', async () => {
    const picture = vipsPicture(folder, 'space', slopes(255), 3, 8)
    say('vips', ['jpegsave', picture, path('stated.jpg')])
    copyFileSync(path('stated.jpg'), path('optional.jpg'))
    write('stated.jpg', ['-ColorSpace#=1'])
    write('optional.jpg', ['-ColorSpace#=65535', '-InteropIndex=R03'])
    expect(await open('stated.jpg')).toMatchObject({ developed: { space: 'sRGB' }, warnings: [] })
    const optional = await open('optional.jpg')
    expect(optional).toMatchObject({ developed: { space: 'DCF optional RGB' }, warnings: [] })
    const middle = Math.round((128 / 255) ** (563 / 256) * 65535)
    expect([...optional.sensor.codes].some((code) => code === middle)).toBe(true)
  })

  it('a JPEG with a profile is linear by that profile', async () => {
    const picture = vipsPicture(folder, 'profiled', slopes(255), 3, 8)
    say('vips', ['jpegsave', picture, path('profiled.jpg'), '--profile', 'p3'])
    const { developed, warnings, facts } = await open('profiled.jpg')
    expect(developed!.space).toMatch(/P3/)
    expect(warnings).toEqual([])
    // Red of Display P3 under D65 (CSS Color 4).
    expect(facts.cameraToXyz![0]).toBeCloseTo(0.4866, 2)
  })
})

describe.skipIf(!hasVips)('clipping (skipped without vips)', () => {
  const flat = async (name: string, colour: number[]) => {
    const codes = Array.from({ length: width * height }, () => colour).flat()
    say('vips', ['tiffsave', vipsPicture(folder, name, codes, 3, 8), path(`${name}.tif`)])
    const { sensor, overview, facts } = await open(`${name}.tif`)
    return { ...samplePatch(sensor, facts.noise, [0.5, 0.5], 10), alpha: overview.rgba[3] }
  }

  it('of one channel at its largest code is clipping', async () => {
    expect(await flat('high', [255, 90, 40])).toMatchObject({ reliability: 'clipped', alpha: 1 })
  })
  it('just below is not', async () => {
    expect(await flat('below', [248, 90, 40])).not.toMatchObject({ reliability: 'clipped' })
  })
  it('at code 0 there is nothing to tell', async () => {
    expect(await flat('low', [120, 90, 0])).toMatchObject({ reliability: 'too dark', meanCameraRgb: null })
  })
})
