// What other programs learn from the metadata of exported files (exiftool); the profile as Little CMS reads it out of the file.
import { join } from 'node:path'
import { beforeAll, expect, it } from 'vitest'
import { version } from '../../package.json'
import { prepareJpegEncoder } from '../../src/commands/node-jpeg.ts'
import { OUTPUT_SPACES, type OutputSpaceId } from '../../src/colour/output-space.ts'
import { hasTool, readMetadata } from '../support/outside-tools.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'
import { exportToFile } from './export-job.ts'

const folder = temporaryFolder()
beforeAll(prepareJpegEncoder)

const formats = ['tiff16', 'jpeg'] as const

it.skipIf(!hasTool('exiftool')).each(formats)(
  '%s carries the exposure, not the location (skipped without exiftool)',
  async (format) => {
    const path = join(folder, `carried.${format}`)
    await exportToFile(path, { format })
    const read = readMetadata(path)
    expect(read).toMatchObject({
      'IFD0:Make': 'Fennel',
      'IFD0:Model': 'Fennel Two',
      'IFD0:Artist': 'Åse Ødegård-Example',
      'IFD0:Copyright': 'Free to use in tests',
      'IFD0:ImageDescription': 'Meadow at Heron Mere',
      'IFD0:Software': `Rimeleaf ${version}`,
      'ExifIFD:LensModel': 'Quill 35mm F2.8',
      'ExifIFD:ISO': 400,
      'ExifIFD:ExposureTime': 0.004,
      'ExifIFD:FNumber': 5.6,
      'ExifIFD:FocalLength': 35,
      'ExifIFD:DateTimeOriginal': '2026:05:17 14:03:22',
    })
    expect(Object.keys(read).filter((name) => name.startsWith('GPS'))).toEqual([])
  },
)

it.skipIf(!hasTool('exiftool')).each(formats)(
  '%s carries the location where it is kept (skipped without exiftool)',
  async (format) => {
    const path = join(folder, `located.${format}`)
    await exportToFile(path, { format, keepLocation: true })
    const read = readMetadata(path)
    expect(read['Composite:GPSLatitude']).toBeCloseTo(-41.2905, 6)
    expect(read['Composite:GPSLongitude']).toBeCloseTo(12.5011, 6)
    expect(read['GPS:GPSAltitude']).toBeCloseTo(86.5, 3)
  },
)

it.skipIf(!hasTool('exiftool')).each(Object.keys(OUTPUT_SPACES) as OutputSpaceId[])(
  'files in %s name their profile (skipped without exiftool)',
  async (space) => {
    for (const format of formats) {
      const path = join(folder, `${space}.${format}`)
      await exportToFile(path, { format, space })
      expect(readMetadata(path)['ICC_Profile:ProfileDescription']).toBe(`Rimeleaf ${OUTPUT_SPACES[space].title}`)
    }
  },
)

it.skipIf(!hasTool('exiftool'))('unknown facts are left out (skipped without exiftool)', async () => {
  const path = join(folder, 'unknown.tif')
  await exportToFile(path, { metadata: { make: '  ', iso: 0 } })
  const read = readMetadata(path)
  for (const name of ['IFD0:Make', 'ExifIFD:ISO', 'ExifIFD:ExposureTime', 'IFD0:Artist'])
    expect(read).not.toHaveProperty([name])
})
