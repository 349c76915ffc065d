// What of a folder becomes frames. Endings and names are common practice, no source; the folder is made up.
import { describe, expect, it } from 'vitest'

import { framesOfFolder, leftOutSentence } from '../../src/workbench/folder-companions.ts'

const fileNamed = (name: string) => new File(['x'], name)
const framesAmong = (...names: string[]) => framesOfFolder(names.map(fileNamed)).map((file) => file.name)

describe('files of a folder', () => {
  it.each(['pond-1.DNG', 'pond-1.nef', 'pond-1.RAF', 'scan.tif', 'pond-1.JPG', 'no ending', 'pond.xmp.dng'])(
    'tries %s',
    (name) => expect(framesAmong(name)).toEqual([name]),
  )

  it.each([
    'pond-1.XMP',
    'pond-1.dng.xmp',
    'walk.MOV',
    'note.wav',
    'pond-1.heic',
    '.DS_Store',
    '._pond-1.dng',
    'Thumbs.db',
  ])('passes %s by', (name) => expect(framesAmong(name)).toEqual([]))

  it('come by name with numbers counted', () => {
    const names = ['pond-10.dng', 'pond-2.xmp', 'pond-2.dng', 'pond-1.dng']
    const frames = framesOfFolder(names.map(fileNamed))
    expect(frames.map((file) => file.name)).toEqual(['pond-1.dng', 'pond-2.dng', 'pond-10.dng'])
  })

  it('are no JPEG or TIFF that lies beside a raw file of its name', () => {
    expect(framesAmong('pond-1.DNG', 'Pond-1.jpg', 'pond-1.tif', 'pond-2.jpg', 'pond-2.xmp')).toEqual([
      'pond-1.DNG',
      'pond-2.jpg',
    ])
  })

  it('are counted in one sentence, and a folder without frames says so', () => {
    expect(leftOutSentence('pond', 3, 0)).toBeNull()
    expect(leftOutSentence('pond', 3, 1)).toBe(
      'Opened 3 from the folder pond and left out 1 file that is no frame of its own.',
    )
    expect(leftOutSentence('pond', 0, 2)).toMatch(
      /holds only 2 files that are no frames of their own: nothing was opened/,
    )
    expect(leftOutSentence('pond', 0, 0)).toMatch(/is empty/)
  })
})
