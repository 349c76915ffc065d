// The tables of a CLF file: LUT1D (also over all half floats) and LUT3D, scaled from code values to numbers. In the file blue
// runs fastest; here red does.
import { halfOfBits } from '../math/half-float.ts'
import { choiceAttribute, type ClfElement, clfNumbers, neededChild } from './clf-text.ts'
import type { CubeNode, LineNode } from './colour-transform.ts'

/** The standard sets no limit to a cube; 129³ is the largest in use (common practice, no source). */
const MOST_CUBE = 129
const HALVES = 65536

function dimOf(array: ClfElement, count: number): number[] {
  array.allowAttributes(['dim'])
  const words = (array.attribute('dim') ?? '').trim().split(/\s+/)
  if (words.length !== count || !words.every((word) => /^\d{1,6}$/.test(word)))
    array.refuse(`the dim must be ${count} whole numbers, not “${words.join(' ').slice(0, 40)}”`)
  return words.map(Number)
}

function readLut1d(element: ClfElement, outputOne: number): LineNode {
  choiceAttribute(element, 'interpolation', ['linear'], 'linear')
  const halfDomain = choiceAttribute(element, 'halfDomain', ['true', 'false'], 'false') === 'true'
  const rawHalfs = choiceAttribute(element, 'rawHalfs', ['true', 'false'], 'false') === 'true'
  const array = neededChild(element, 'Array')
  const [length, columns] = dimOf(array, 2)
  if (columns !== 1 && columns !== 3) array.refuse(`LUT1D holds 1 or 3 columns, not ${columns}`)
  if (halfDomain ? length !== HALVES : length < 2 || length > HALVES)
    array.refuse(
      halfDomain ? `a half domain needs ${HALVES} entries` : `LUT1D holds 2 to ${HALVES} entries, not ${length}`,
    )
  const numbers = clfNumbers(array, length * columns, halfDomain)
  const valueOf = (written: number) => {
    if (!rawHalfs) return written / outputOne
    if (!Number.isInteger(written) || written < 0 || written >= HALVES)
      array.refuse(`raw halves are whole numbers from 0 to ${HALVES - 1}, not ${written}`)
    return halfOfBits(written)
  }
  const data = Float32Array.from({ length: length * 3 }, (_, i) =>
    valueOf(numbers[columns === 3 ? i : Math.floor(i / 3)]),
  )
  if (!halfDomain && !data.every(Number.isFinite)) array.refuse('a number is too large')
  return { kind: 'line', length, halfDomain, data }
}

function readLut3d(element: ClfElement, outputOne: number): CubeNode {
  const reading = choiceAttribute(element, 'interpolation', ['trilinear', 'tetrahedral'], 'trilinear')
  const array = neededChild(element, 'Array')
  const [size, second, third, columns] = dimOf(array, 4)
  if (second !== size || third !== size || columns !== 3)
    array.refuse('LUT3D must be as deep as it is wide, with 3 columns')
  if (size < 2 || size > MOST_CUBE) array.refuse(`LUT3D of 2 to ${MOST_CUBE} points a side can be read, not ${size}`)
  const numbers = clfNumbers(array, size ** 3 * 3)
  const data = new Float32Array(numbers.length)
  for (let red = 0, from = 0; red < size; red++)
    for (let green = 0; green < size; green++)
      for (let blue = 0; blue < size; blue++, from += 3) {
        const to = ((blue * size + green) * size + red) * 3
        for (let i = 0; i < 3; i++) data[to + i] = numbers[from + i] / outputOne
      }
  if (!data.every(Number.isFinite)) array.refuse('a number is too large')
  return { kind: 'cube', size, reading, data }
}

export function readClfTable(element: ClfElement, outputOne: number): LineNode | CubeNode {
  return element.name === 'LUT1D' ? readLut1d(element, outputOne) : readLut3d(element, outputOne)
}
