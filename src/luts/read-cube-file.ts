// Reads `.cube` text (Adobe Cube LUT Specification 1.0, 2013) as a colour transform. The numbers keep the file's own encoding.
// Beyond the specification it takes what is found in the wild: tabs, CRLF, a byte order mark, blank lines, a domain stated as an
// input range, and a line followed by a cube in one file.
import type { Channels, ColourTransform, TransformNode } from './colour-transform.ts'
import { LutFileError, type Refuse } from './lut-file-error.ts'

/** Largest sizes read: the specification's for lines; for cubes 129, because 256³ would need 200 MB to no use (our choice). */
const LINE_SIZES = [2, 65536] as const
const CUBE_SIZES = [2, 129] as const

const numberText = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/

interface Header {
  title: string
  lineSize: number
  cubeSize: number
  /** Domain of the line and of the cube; both for the keywords that name none. */
  lineDomain: [Channels, Channels]
  cubeDomain: [Channels, Channels]
}

function numbersOf(words: readonly string[], count: number, line: number, refuse: Refuse): number[] {
  if (words.length !== count) return refuse(line, `${count} numbers belong here, not ${words.length}`)
  return words.map((word) => {
    const value = numberText.test(word) ? Number(word) : NaN
    return Number.isFinite(value) ? value : refuse(line, `“${word.slice(0, 40)}” is not a finite number`)
  })
}

function sizeOf(words: readonly string[], [least, most]: readonly [number, number], line: number, refuse: Refuse) {
  const size = /^\d+$/.test(words[0] ?? '') && words.length === 1 ? Number(words[0]) : NaN
  return size >= least && size <= most
    ? size
    : refuse(line, `the size must be a whole number from ${least} to ${most}, not “${words.join(' ').slice(0, 40)}”`)
}

const three = (value: number): Channels => [value, value, value]

/** Reads one keyword line into `header`. */
function readKeyword(header: Header, text: string, line: number, refuse: Refuse): string {
  const [keyword, ...words] = text.split(/[ \t]+/)
  const channels = () => numbersOf(words, 3, line, refuse) as unknown as Channels
  const range = (): [Channels, Channels] => {
    const [least, most] = numbersOf(words, 2, line, refuse)
    return [three(least), three(most)]
  }
  switch (keyword) {
    case 'TITLE': {
      const title = /^TITLE[ \t]+"(.*)"$/.exec(text)?.[1]
      header.title = title ?? refuse(line, 'the title must stand in straight quotation marks')
      break
    }
    case 'LUT_1D_SIZE':
      header.lineSize = sizeOf(words, LINE_SIZES, line, refuse)
      break
    case 'LUT_3D_SIZE':
      header.cubeSize = sizeOf(words, CUBE_SIZES, line, refuse)
      break
    case 'DOMAIN_MIN':
      header.lineDomain[0] = header.cubeDomain[0] = channels()
      break
    case 'DOMAIN_MAX':
      header.lineDomain[1] = header.cubeDomain[1] = channels()
      break
    case 'LUT_1D_INPUT_RANGE':
      header.lineDomain = range()
      break
    case 'LUT_3D_INPUT_RANGE':
      header.cubeDomain = range()
      break
    default:
      refuse(line, `“${keyword.slice(0, 40)}” is no keyword of this format`)
  }
  return keyword
}

/** The domain brought to 0…1; no node where it is that already. */
function domainNodes([least, most]: readonly [Channels, Channels], refuse: Refuse): TransformNode[] {
  if (least.every((value) => value === 0) && most.every((value) => value === 1)) return []
  if (least.some((value, i) => !(most[i] > value))) return refuse(null, 'its domain ends where it begins, or before')
  const scales = most.map((value, i) => 1 / (value - least[i]))
  if (!scales.every(Number.isFinite)) return refuse(null, 'its domain is too narrow for numbers')
  const offset = scales.map((scale, i) => -least[i] * scale) as unknown as Channels
  return [{ kind: 'matrix', matrix: [scales[0], 0, 0, 0, scales[1], 0, 0, 0, scales[2]], offset }]
}

/**
 * The transform in the text of a `.cube` file. Outside its domain a table holds its ends.
 * @throws LutFileError with `fileName`, the line and the reason
 */
export function readCubeFile(text: string, fileName: string): ColourTransform {
  const refuse: Refuse = (line, reason) => {
    throw new LutFileError(fileName, line, reason)
  }
  const header: Header = {
    title: '',
    lineSize: 0,
    cubeSize: 0,
    lineDomain: [three(0), three(1)],
    cubeDomain: [three(0), three(1)],
  }
  const seen = new Set<string>()
  const remarks: string[] = []
  let data = new Float32Array(0)
  let filled = 0
  let line = 0
  for (let from = text.charCodeAt(0) === 0xfeff ? 1 : 0; from < text.length;) {
    const end = text.indexOf('\n', from)
    const raw = text.slice(from, end < 0 ? text.length : end)
    from = end < 0 ? text.length : end + 1
    line++
    const isTitle = raw.startsWith('TITLE')
    const content = (isTitle ? raw : raw.replace(/#.*$/s, '')).trim()
    if (raw.startsWith('#')) remarks.push(raw.slice(1).trim())
    if (content === '') continue
    if (/^[A-Za-z_]/.test(content) && !/^(?:nan|inf)/i.test(content)) {
      if (filled > 0) refuse(line, 'a keyword stands among the numbers; all must come before them')
      const keyword = readKeyword(header, content, line, refuse)
      if (seen.has(keyword)) refuse(line, `“${keyword}” is said twice`)
      seen.add(keyword)
      continue
    }
    if (filled === 0) {
      if (header.lineSize + header.cubeSize === 0) refuse(line, 'numbers come before the size of the table')
      data = new Float32Array((header.lineSize + header.cubeSize ** 3) * 3)
    }
    if (filled === data.length) refuse(line, `more than the ${data.length / 3} lines of numbers that its size asks for`)
    data.set(numbersOf(content.split(/[ \t]+/), 3, line, refuse), filled)
    if (!data.subarray(filled, filled + 3).every(Number.isFinite)) refuse(line, 'a number is too large')
    filled += 3
  }
  const { title, lineSize, cubeSize } = header
  if (lineSize + cubeSize === 0) refuse(null, 'it states no size (LUT_1D_SIZE or LUT_3D_SIZE)')
  const wanted = lineSize + cubeSize ** 3
  if (filled < wanted * 3) refuse(line, `it ends after ${filled / 3} of ${wanted} lines of numbers`)
  if (lineSize > 0 && cubeSize > 0 && (seen.has('DOMAIN_MIN') || seen.has('DOMAIN_MAX')))
    refuse(null, 'it holds a line and a cube, and does not say which of them its domain belongs to')

  const nodes: TransformNode[] = []
  if (lineSize > 0) {
    const node = { kind: 'line', length: lineSize, halfDomain: false, data: data.slice(0, lineSize * 3) } as const
    nodes.push(...domainNodes(header.lineDomain, refuse), node)
  }
  if (cubeSize > 0) {
    const node = { kind: 'cube', size: cubeSize, reading: 'tetrahedral', data: data.slice(lineSize * 3) } as const
    nodes.push(...domainNodes(header.cubeDomain, refuse), node)
  }
  return { title, remarks, nodes }
}
