// `.cube` (Adobe Cube LUT Specification 1.0, 2013; keywords and limits from memory of it) held to the colour engine of
// opencolorio-tools in both directions; and refusals by line.
import { describe, expect, test } from 'vitest'
import { applyTransform } from '../../src/luts/apply-transform.ts'
import type { ColourTransform } from '../../src/luts/colour-transform.ts'
import { readCubeFile } from '../../src/luts/read-cube-file.ts'
import { sampleCube } from '../../src/luts/sample-cube.ts'
import { writeCubeFile } from '../../src/luts/write-cube-file.ts'
import { engineColours, engineGrid, hasColourEngine, placed } from '../support/outside-colour-engine.ts'
import { say } from '../support/outside-tools.ts'
import { evenPlaces, largestApart } from '../support/sample-places.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'

const folder = temporaryFolder()

const coloursOf = (transform: ColourTransform, places: readonly number[][]) =>
  places.map((place) => {
    const rgb = Float64Array.from(place)
    applyTransform(transform, rgb)
    return [...rgb]
  })

/** A bent map that leaves 0…1 here and there. */
const bent = (rgb: Float64Array) => {
  const [r, g, b] = rgb
  rgb[0] = b ** 1.5 + 0.05 * g
  rgb[1] = Math.sqrt(g) * (1 - 0.2 * r)
  rgb[2] = 1.1 * r - 0.08 * g * b
}
const ours = (size: number) =>
  writeCubeFile({ title: 'Leaves "bent"', remarks: ['sRGB in and out'], size, data: sampleCube(size, bent) })

const gridPlaces = (size: number) =>
  Array.from({ length: size ** 3 }, (_, i) =>
    [i % size, Math.floor(i / size) % size, Math.floor(i / size ** 2)].map((n) => n / (size - 1)),
  )

const cubes: Readonly<Record<string, string>> = {
  'line with comments, tabs and blank lines':
    '# made by hand\n\nTITLE "a # b"\nLUT_1D_SIZE 4\n\n0\t0 0\n 0.2 .3\t0.1 \n.6 .7 5e-1\n# between\n1.0 1 1e0\n',
  'line with a domain': 'LUT_1D_SIZE 3\nDOMAIN_MIN -0.5 0 0.1\nDOMAIN_MAX 1.5 2 0.9\n0 0 0\n0.5 0.6 0.4\n1 1 1\n',
  'cube with a domain':
    'LUT_3D_SIZE 2\nDOMAIN_MIN -0.5 0 0.1\nDOMAIN_MAX 1.5 2 0.9\n0 0 0\n1 0 0\n0 1 .1\n1 1 0\n0 0 1\n1 .1 1\n0 1 1\n1 1 .9\n',
  'cube with an input range':
    'LUT_3D_SIZE 2\nLUT_3D_INPUT_RANGE -0.25 1.5\n0 0 0\n1 0 0\n0 1 .1\n1 1 0\n0 0 1\n1 .1 1\n0 1 1\n1 1 .9\n',
  'line and cube, each with its range':
    'LUT_1D_SIZE 3\nLUT_1D_INPUT_RANGE -0.5 1.5\nLUT_3D_SIZE 2\nLUT_3D_INPUT_RANGE 0.0 1.0\n0 0 0\n.4 .5 .6\n1 1 1\n0 0 0\n1 0 0\n0 1 .1\n1 1 0\n0 0 1\n1 .1 1\n0 1 1\n1 1 .9\n',
}

describe.skipIf(!hasColourEngine)('the outside engine agrees (skipped without opencolorio-tools)', () => {
  test.each(Object.entries(cubes))('%s', (name, text) => {
    const places = evenPlaces(40, -0.3, 1.3)
    const wanted = engineColours(placed(folder, 'read.cube', text), places)
    expect(largestApart(coloursOf(readCubeFile(text, name), places), wanted)).toBeLessThan(2e-6)
    const wild = `\uFEFF${text.replaceAll('\n', '\r\n')}`
    expect(coloursOf(readCubeFile(wild, name), places)).toEqual(coloursOf(readCubeFile(text, name), places))
  })

  test.each([17, 33, 65])('what is written with %i points a side gives the same 1,000 colours', (size) => {
    const text = ours(size)
    const wanted = engineGrid(placed(folder, `ours-${size}.cube`, text), 10)
    expect(largestApart(coloursOf(readCubeFile(text, 'ours.cube'), gridPlaces(10)), wanted)).toBeLessThan(1e-5)
  })

  test.each(['iridas_cube', 'resolve_cube'])('what the engine bakes as %s is read as it was meant', (format) => {
    const from = placed(folder, 'from.cube', ours(9))
    const made = `${folder}/made-${format}.cube`
    say('ociobakelut', ['--lut', from, '--slope', '1.1', '1', '.9', '--format', format, '--cubesize', '12', made])
    const places = evenPlaces(60)
    const text = say('cat', [made])
    expect(largestApart(coloursOf(readCubeFile(text, made), places), engineColours(made, places))).toBeLessThan(2e-6)
  })
})

test('32-bit floats come back exactly', () => {
  const data = sampleCube(5, bent).map((value, i) => value * 10 ** ((i % 7) - 3))
  const [node] = readCubeFile(writeCubeFile({ title: '', remarks: [], size: 5, data }), 'a.cube').nodes
  expect(node).toMatchObject({ kind: 'cube', size: 5, data })
})

const eight = '0 0 0\n'.repeat(8)
const refusals: readonly (readonly [text: string, reason: RegExp])[] = [
  ['', /^leaf\.cube cannot be used as a colour table: it states no size/],
  ['LUT_3D_SIZE 2\n0 0 0\n', /line 2: it ends after 1 of 8 lines/],
  [`LUT_3D_SIZE 2\n${eight}0 0 0\n`, /line 10: more than the 8 lines of numbers/],
  [`LUT_3D_SIZE 2\n${eight.replace('0 0 0', '0 0')}`, /line 2: 3 numbers belong here, not 2/],
  [`LUT_3D_SIZE 2\n${eight.replace('0 0 0', '0 0,5 0')}`, /line 2: “0,5” is not a finite number/],
  [`LUT_3D_SIZE 2\n${eight.replace('0 0 0', '0 nan 0')}`, /line 2: “nan” is not a finite number/],
  [`LUT_3D_SIZE 2\n${eight.replace('0 0 0', '0 1e39 0')}`, /line 2: a number is too large/],
  [`LUT_3D_SIZE 2\nLUT_3D_SIZE 2\n${eight}`, /line 2: “LUT_3D_SIZE” is said twice/],
  [`LUT_3D_SIZE 1\n0 0 0\n`, /line 1: the size must be a whole number from 2 to 129, not “1”/],
  [`LUT_3D_SIZE 256\n`, /from 2 to 129, not “256”/],
  [`0 0 0\nLUT_3D_SIZE 2\n`, /line 1: numbers come before the size/],
  [`LUT_3D_SIZE 2\n0 0 0\nDOMAIN_MIN 0 0 0\n`, /line 3: a keyword stands among the numbers/],
  [`LUT_3D_SIZE 2\nDOMAIN_MIN 1 1 1\n${eight}`, /its domain ends where it begins/],
  [`LUT_3D_SIZE 2\nGAIN 2\n${eight}`, /line 2: “GAIN” is no keyword/],
  [`TITLE leaves\nLUT_3D_SIZE 2\n${eight}`, /line 1: the title must stand in straight quotation marks/],
  [`LUT_1D_SIZE 2\nLUT_3D_SIZE 2\nDOMAIN_MAX 2 2 2\n0 0 0\n1 1 1\n${eight}`, /does not say which of them its domain/],
]
test.each(refusals)('%# is refused with line and reason', (text, reason) => {
  expect(() => readCubeFile(text, 'leaf.cube')).toThrow(reason)
})
