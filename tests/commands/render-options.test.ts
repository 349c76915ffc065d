// The command line of `npm run render`: what is left out has a stated default, what is wrong is said in a sentence.
import { expect, it } from 'vitest'
import { readRenderOptions } from '../../src/commands/render-options.ts'

const read = (line: string) => readRenderOptions(line.split(' '))

it('a short line means a 16-bit TIFF in sRGB without location, overwriting nothing', () => {
  expect(read('a.dng b.dng --out done')).toEqual({
    files: ['a.dng', 'b.dng'],
    out: 'done',
    edit: undefined,
    filterNm: undefined,
    overwrite: false,
    settings: { format: 'tiff16', space: 'srgb', quality: 92, keepLocation: false },
  })
})

it('a long line is read whole', () => {
  const line =
    'a.dng --out d --edit e.json --filter full --format jpeg --space display-p3 --quality 80 --keep-location --overwrite'
  expect(read(line)).toEqual({
    files: ['a.dng'],
    out: 'd',
    edit: 'e.json',
    filterNm: null,
    overwrite: true,
    settings: { format: 'jpeg', space: 'display-p3', quality: 80, keepLocation: true },
  })
  expect(read('a.dng --out d --bits 8 --filter 590')).toMatchObject({ filterNm: 590, settings: { format: 'tiff8' } })
})

it.each([
  ['--out d', /No file/],
  ['a.dng', /--out/],
  ['a.dng --out d --format png', /tiff or jpeg, not “png”/],
  ['a.dng --out d --format jpeg --bits 16', /8 bits/],
  ['a.dng --out d --bits 12', /16 or 8/],
  ['a.dng --out d --space cmyk', /cmyk/],
  ['a.dng --out d --quality 0', /1 to 100/],
  ['a.dng --out d --filter red', /400 to 1100/],
  ['a.dng --out d --unknown', /unknown/],
])('%s is refused', (line, reason) => {
  expect(() => read(line)).toThrow(reason)
})
