// Ten thousand seeded mutations of colour table files: each is refused with file and reason, or read as what the text says. What
// it says is found again by simpler means than the reader's: the numbers of its lines, or the same colours after writing anew.
import { expect, test } from 'vitest'
import { applyTransform } from '../../src/luts/apply-transform.ts'
import type { ColourTransform } from '../../src/luts/colour-transform.ts'
import { LutFileError } from '../../src/luts/lut-file-error.ts'
import { readClfFile } from '../../src/luts/read-clf-file.ts'
import { readCubeFile } from '../../src/luts/read-cube-file.ts'
import { sampleCube } from '../../src/luts/sample-cube.ts'
import { writeClfFile } from '../../src/luts/write-clf-file.ts'
import { writeCubeFile } from '../../src/luts/write-cube-file.ts'
import { engineColours, hasColourEngine, placed } from '../support/outside-colour-engine.ts'
import { largestApart } from '../support/sample-places.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'

const folder = temporaryFolder()

/** mulberry32 (T. Ettinger, public domain). */
function random(seed: number): () => number {
  return () => {
    seed = (seed + 0x6d2b79f5) | 0
    let t = Math.imul(seed ^ (seed >>> 15), 1 | seed)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32
  }
}

const odd = [
  'nan',
  'inf',
  '-',
  '1e999',
  '0x10',
  '',
  '"',
  '<',
  '&',
  '>',
  '#',
  '\t',
  '\r',
  '\0',
  '９',
  '1,5',
  'LUT_3D_SIZE 3',
  '-0',
  '1e-40',
  '/>',
  '😀',
]

/** A mutation: characters changed, cut, doubled or put in, lines swapped or dropped, the end torn off. */
function mutated(text: string, next: () => number): string {
  const at = Math.floor(next() * text.length)
  const span = Math.floor(next() ** 3 * 60) + 1
  const lines = text.split('\n')
  const [from, to] = [Math.floor(next() * lines.length), Math.floor(next() * lines.length)]
  switch (Math.floor(next() * 8)) {
    case 0:
      return text.slice(0, at) + String.fromCharCode(32 + Math.floor(next() * 95)) + text.slice(at + 1)
    case 1:
      return text.slice(0, at) + text.slice(at + span)
    case 2:
      return text.slice(0, at) + text.slice(at, at + span).repeat(2) + text.slice(at + span)
    case 3:
      return text.slice(0, at) + odd[Math.floor(next() * odd.length)] + text.slice(at)
    case 4:
      ;[lines[from], lines[to]] = [lines[to], lines[from]]
      return lines.join('\n')
    case 5:
      return lines.toSpliced(from, 1).join('\n')
    case 6:
      return text.slice(0, at)
    default:
      return lines.toSpliced(from, 0, lines[to]).join('\n')
  }
}

const places = [
  [0.18, 0.4, 0.7],
  [0.9, 0.05, 0.5],
  [0.33, 0.66, 0.99],
]
const coloursOf = (transform: ColourTransform) =>
  places.map((place) => {
    const rgb = Float64Array.from(place)
    applyTransform(transform, rgb)
    return [...rgb]
  })

/** The transform, or null where it is refused as it should be; any other failure is thrown on. */
function attempt(read: () => ColourTransform, fileName: string): ColourTransform | null {
  try {
    return read()
  } catch (reason) {
    const words = new RegExp(`^${fileName} cannot be used as a colour table(, line \\d+)?: .{8,}\\.$`, 's')
    if (reason instanceof LutFileError && words.test(reason.message)) return null
    throw reason
  }
}

const bent = (rgb: Float64Array) => {
  rgb[0] = 0.9 * rgb[2] + 0.03
  rgb[1] = rgb[1] ** 1.4
}

test('.cube: 6,000 mutations', () => {
  const originals = [
    writeCubeFile({ title: 'Leaves', remarks: ['a remark'], size: 3, data: sampleCube(3, bent) }),
    'LUT_1D_SIZE 5\nDOMAIN_MIN 0 0 0\nDOMAIN_MAX 1 1 2\n0 0 0\n.2 .3 .1\n.4 .5 .6\n.7 .8 .9\n1 1 1\n',
  ]
  const next = random(20261)
  const wrong: string[] = []
  let accepted = 0
  for (let i = 0; i < 6000; i++) {
    const text = mutated(originals[i % 2], next)
    const transform = attempt(() => readCubeFile(text, 'leaf.cube'), 'leaf.cube')
    if (!transform) continue
    accepted++
    const said = text
      .split('\n')
      .map((line) => line.replace(/#.*/s, '').trim())
      .filter((line) => /^[-+.\d]/.test(line))
      .flatMap((line) => line.split(/\s+/).map((word) => Math.fround(Number(word))))
    const held = transform.nodes.flatMap((node) => ('data' in node ? [...node.data] : []))
    if (!held.every((value, n) => value === said[n]) || held.length !== said.length) wrong.push(text)
  }
  expect(wrong).toEqual([])
  console.log(`.cube: ${accepted} of 6000 mutations read, the others refused`)
  expect(accepted).toBeGreaterThan(300)
})

const original = writeClfFile({
  id: 'a',
  title: 'Leaves',
  remarks: ['a remark'],
  takes: 'linear light',
  gives: 'linear light',
  nodes: [
    { kind: 'matrix', matrix: [0.9, 0.1, 0, 0, 1, 0, 0.2, 0, 0.8], offset: [0.01, 0, 0] },
    {
      kind: 'log',
      direction: 'encode',
      curves: [0, 1, 2].map(() => ({
        base: 2,
        logSideSlope: 0.06,
        logSideOffset: 0.55,
        linSideSlope: 1,
        linSideOffset: 0,
        linSideBreak: 0.008,
        linearSlope: null,
      })) as never,
    },
    { kind: 'cube', size: 2, reading: 'tetrahedral', data: sampleCube(2, bent) },
    {
      kind: 'exponent',
      direction: 'forward',
      hasLine: true,
      negatives: 'pass',
      curves: [0, 1, 2].map(() => ({ exponent: 2.4, offset: 0.055 })) as never,
    },
    { kind: 'range', scale: 1, offset: 0, lowest: 0, highest: 1 },
    { kind: 'line', length: 3, halfDomain: false, data: new Float32Array([0, 0, 0, 0.4, 0.5, 0.6, 1, 1, 1]) },
    {
      kind: 'cdl',
      direction: 'forward',
      clamps: true,
      slope: [1, 1.1, 1],
      offset: [0, 0, 0.01],
      power: [1, 1, 1.2],
      saturation: 1.1,
    },
  ],
})

test('CLF: 6,000 mutations; of those read, every eighth is asked of the outside engine too', () => {
  const next = random(20262)
  const wrong: string[] = []
  let [accepted, asked, refusedThere] = [0, 0, 0]
  for (let i = 0; i < 6000; i++) {
    const text = mutated(original, next)
    const transform = attempt(() => readClfFile(text, 'leaf.clf'), 'leaf.clf')
    if (!transform) continue
    accepted++
    const colours = coloursOf(transform)
    const again = writeClfFile({ id: 'b', title: '', remarks: [], takes: '', gives: '', nodes: transform.nodes })
    const apart = largestApart(coloursOf(readClfFile(again, 'again.clf')), colours)
    if (apart > 1e-9) wrong.push(text)
    if (!hasColourEngine || accepted % 8 !== 0 || !colours.flat().every(Number.isFinite)) continue
    asked++
    try {
      if (largestApart(engineColours(placed(folder, 'leaf.clf', text), places), colours) > 1e-5) wrong.push(text)
    } catch (reason) {
      if (!/could not be loaded/.test((reason as Error).message)) throw reason
      refusedThere++
    }
  }
  console.log(
    `CLF: ${accepted} of 6000 mutations read, ${asked} asked of the engine, which refused ${refusedThere} of them`,
  )
  expect(refusedThere).toBe(0)
  expect(accepted).toBeGreaterThan(300)
})
