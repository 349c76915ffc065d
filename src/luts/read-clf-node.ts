// One process node of a CLF file (Academy S-2014-006 / SMPTE ST 2136-1) as a node without bit depths. Matrix, Range and tables
// hold code values of the stated depths; Log, Exponent and ASC_CDL work on normalised numbers whatever the depths say.
import type { Channels, TransformNode } from './colour-transform.ts'
import {
  choiceAttribute,
  type ClfElement,
  clfNumber,
  clfNumbers,
  holdsOnlyElements,
  neededChild,
  numberAttribute,
  onlyChild,
} from './clf-text.ts'
import { readClfTable } from './read-clf-table.ts'

/** The code value of 1 at each bit depth. */
const CODE_OF_ONE: Readonly<Record<string, number>> = {
  '8i': 255,
  '10i': 1023,
  '12i': 4095,
  '16i': 65535,
  '16f': 1,
  '32f': 1,
}
const bitDepths = Object.keys(CODE_OF_ONE)

export interface Depths {
  readonly input: string
  readonly output: string
}

/** The stated bit depths of a process node. */
export function depthsOf(element: ClfElement): Depths {
  return {
    input: choiceAttribute(element, 'inBitDepth', bitDepths),
    output: choiceAttribute(element, 'outBitDepth', bitDepths),
  }
}

const commonAttributes = ['id', 'name', 'inBitDepth', 'outBitDepth']
const commonChildren = ['Description', 'Info']

function allow(element: ClfElement, attributes: readonly string[], children: readonly string[]): void {
  element.allowAttributes([...commonAttributes, ...attributes])
  holdsOnlyElements(element)
  for (const child of element.children)
    if (![...commonChildren, ...children].includes(child.name))
      child.refuse(`${child.name} is not known inside ${element.name}`)
}

function readMatrix(element: ClfElement, inputOne: number, outputOne: number): TransformNode {
  allow(element, [], ['Array'])
  const array = neededChild(element, 'Array')
  array.allowAttributes(['dim'])
  const dim = (array.attribute('dim') ?? '').trim().split(/\s+/).join(' ')
  if (!['3 3', '3 3 3', '3 4', '3 4 3'].includes(dim))
    array.refuse(`a Matrix of dim “${dim.slice(0, 40)}” is not known`)
  const columns = dim.startsWith('3 4') ? 4 : 3
  const numbers = clfNumbers(array, 3 * columns)
  const rows = [0, 1, 2].map((row) => numbers.slice(row * columns, row * columns + columns))
  return {
    kind: 'matrix',
    matrix: rows.flatMap((row) => row.slice(0, 3).map((value) => (value * inputOne) / outputOne)),
    offset: rows.map((row) => (row[3] ?? 0) / outputOne) as unknown as Channels,
  }
}

function readRange(element: ClfElement, inputOne: number, outputOne: number): TransformNode {
  const names = ['minInValue', 'maxInValue', 'minOutValue', 'maxOutValue']
  allow(element, ['style'], names)
  const clamps = choiceAttribute(element, 'style', ['Clamp', 'noClamp'], 'Clamp') === 'Clamp'
  const [minIn, maxIn, minOut, maxOut] = names.map((name, i) => {
    const child = onlyChild(element, name)
    return child && clfNumbers(child, 1)[0] / (i < 2 ? inputOne : outputOne)
  })
  if ((minIn === undefined) !== (minOut === undefined) || (maxIn === undefined) !== (maxOut === undefined))
    element.refuse('Range states one end on one side only')
  if (minIn === undefined && maxIn === undefined) element.refuse('Range states no limits')
  if (minIn === undefined || maxIn === undefined) {
    if (!clamps) element.refuse('Range without clamping needs both ends')
    return { kind: 'range', scale: 1, offset: 0, lowest: minOut ?? null, highest: maxOut ?? null }
  }
  if (!(maxIn > minIn) || maxOut! < minOut!) element.refuse('Range ends where it begins, or before')
  const scale = (maxOut! - minOut!) / (maxIn - minIn)
  const limits = clamps ? { lowest: minOut!, highest: maxOut! } : { lowest: null, highest: null }
  return { kind: 'range', scale, offset: minOut! - minIn * scale, ...limits }
}

/** Curves of red, green and blue from parameter elements: one for all, or one for each named channel. */
function perChannel<T>(
  element: ClfElement,
  name: string,
  known: readonly string[],
  absent: T | null,
  read: (params: ClfElement) => T,
): readonly [T, T, T] {
  const found = element.children.filter((child) => child.name === name)
  for (const params of found) {
    params.allowAttributes(['channel', ...known])
    holdsOnlyElements(params)
  }
  const forAll = found.filter((params) => params.attribute('channel') === undefined)
  if (forAll.length > 1 || (forAll.length === 1 && found.length > 1))
    element.refuse(`${element.name} holds ${name} twice`)
  if (found.length === 0)
    return absent === null ? element.refuse(`${element.name} needs ${name}`) : [absent, absent, absent]
  if (forAll.length === 1) {
    const curve = read(forAll[0])
    return [curve, curve, curve]
  }
  for (const params of found) choiceAttribute(params, 'channel', ['R', 'G', 'B'])
  const [red, green, blue] = ['R', 'G', 'B'].map((channel) => {
    const [params, second] = found.filter((one) => one.attribute('channel') === channel)
    if (second) second.refuse(`${element.name} holds ${name} of channel ${channel} twice`)
    return params ? read(params) : (absent ?? element.refuse(`${element.name} has no ${name} for channel ${channel}`))
  })
  return [red, green, blue]
}

const plainLogs = ['log10', 'antiLog10', 'log2', 'antiLog2'] as const
const cameraLogs = ['linToLog', 'logToLin', 'cameraLinToLog', 'cameraLogToLin'] as const
const logNames = [
  'base',
  'logSideSlope',
  'logSideOffset',
  'linSideSlope',
  'linSideOffset',
  'linSideBreak',
  'linearSlope',
]

function readLog(element: ClfElement): TransformNode {
  allow(element, ['style'], ['LogParams'])
  const style = choiceAttribute(element, 'style', [...plainLogs, ...cameraLogs])
  const isPlain = (plainLogs as readonly string[]).includes(style)
  if (isPlain && onlyChild(element, 'LogParams')) element.refuse(`Log of style ${style} takes no LogParams`)
  const hasLine = style.startsWith('camera')
  const plain = {
    base: style.endsWith('10') ? 10 : 2,
    logSideSlope: 1,
    logSideOffset: 0,
    linSideSlope: 1,
    linSideOffset: 0,
    linSideBreak: null,
    linearSlope: null,
  }
  const curves = perChannel(element, 'LogParams', logNames, isPlain ? plain : null, (params) => {
    if (!hasLine && (params.attribute('linSideBreak') ?? params.attribute('linearSlope')) !== undefined)
      params.refuse(`Log of style ${style} has no line near black`)
    const linearSlope = params.attribute('linearSlope')
    const curve = {
      base: numberAttribute(params, 'base', 2),
      logSideSlope: numberAttribute(params, 'logSideSlope', 1),
      logSideOffset: numberAttribute(params, 'logSideOffset', 0),
      linSideSlope: numberAttribute(params, 'linSideSlope', 1),
      linSideOffset: numberAttribute(params, 'linSideOffset', 0),
      linSideBreak: hasLine ? numberAttribute(params, 'linSideBreak') : null,
      linearSlope: linearSlope === undefined ? null : clfNumber(params, linearSlope.trim()),
    }
    if (!(curve.base > 0) || curve.base === 1) params.refuse('the base of a logarithm must be above 0 and not 1')
    if (curve.logSideSlope === 0 || curve.linSideSlope === 0 || curve.linearSlope === 0)
      params.refuse('a slope of 0 loses all colour')
    if (curve.linSideBreak !== null && !(curve.linSideSlope * curve.linSideBreak + curve.linSideOffset > 0))
      params.refuse('the line near black begins where the logarithm has no value')
    return curve
  })
  const encodes = ['log10', 'log2', 'linToLog', 'cameraLinToLog'].includes(style)
  return { kind: 'log', direction: encodes ? 'encode' : 'decode', curves }
}

const exponentStyles = ['basic', 'basicMirror', 'basicPassThru', 'monCurve', 'monCurveMirror'].flatMap((style) => [
  `${style}Fwd`,
  `${style}Rev`,
])

function readExponent(element: ClfElement): TransformNode {
  allow(element, ['style'], ['ExponentParams'])
  const style = choiceAttribute(element, 'style', exponentStyles)
  const hasLine = style.startsWith('monCurve')
  const curves = perChannel(element, 'ExponentParams', ['exponent', 'offset'], { exponent: 1, offset: 0 }, (params) => {
    if (!hasLine && params.attribute('offset') !== undefined) params.refuse(`Exponent of style ${style} has no offset`)
    const curve = { exponent: numberAttribute(params, 'exponent'), offset: numberAttribute(params, 'offset', 0) }
    // Limits of the standard.
    const [least, most] = hasLine ? [1, 10] : [0.01, 100]
    if (!(curve.exponent >= least && curve.exponent <= most)) params.refuse(`the exponent must lie in ${least}…${most}`)
    if (!(curve.offset >= 0 && curve.offset <= 0.9)) params.refuse('the offset must lie in 0…0.9')
    return curve
  })
  if (!element.children.some((child) => child.name === 'ExponentParams'))
    element.refuse('Exponent needs ExponentParams')
  return {
    kind: 'exponent',
    direction: style.endsWith('Fwd') ? 'forward' : 'reverse',
    hasLine,
    negatives: style.includes('Mirror') ? 'mirror' : style.includes('PassThru') ? 'pass' : hasLine ? 'pass' : 'clamp',
    curves,
  }
}

function readCdl(element: ClfElement): TransformNode {
  allow(element, ['style'], ['SOPNode', 'SatNode'])
  const style = choiceAttribute(element, 'style', ['Fwd', 'Rev', 'FwdNoClamp', 'RevNoClamp'], 'Fwd')
  const [sop, sat] = [onlyChild(element, 'SOPNode'), onlyChild(element, 'SatNode')]
  for (const holder of [sop, sat]) if (holder) holdsOnlyElements(holder)
  const three = (name: string, otherwise: number) => {
    if (!sop) return [otherwise, otherwise, otherwise] as const
    return clfNumbers(neededChild(sop, name), 3) as unknown as Channels
  }
  const node = {
    kind: 'cdl',
    direction: style.startsWith('Fwd') ? 'forward' : 'reverse',
    clamps: !style.endsWith('NoClamp'),
    slope: three('Slope', 1),
    offset: three('Offset', 0),
    power: three('Power', 1),
    saturation: sat ? clfNumbers(neededChild(sat, 'Saturation'), 1)[0] : 1,
  } as const
  if (node.slope.some((value) => value < 0)) element.refuse('a slope of ASC_CDL is below 0')
  if (node.power.some((value) => !(value > 0))) element.refuse('a power of ASC_CDL is not above 0')
  if (node.saturation < 0) element.refuse('the saturation of ASC_CDL is below 0')
  if (node.direction === 'reverse' && (node.slope.includes(0) || node.saturation === 0))
    element.refuse('ASC_CDL cannot be reversed: a slope or the saturation is 0')
  return node
}

/** The node of a process element; refuses unknown ones by name. */
export function readClfNode(element: ClfElement, depths: Depths): TransformNode {
  const [inputOne, outputOne] = [CODE_OF_ONE[depths.input], CODE_OF_ONE[depths.output]]
  switch (element.name) {
    case 'Matrix':
      return readMatrix(element, inputOne, outputOne)
    case 'Range':
      return readRange(element, inputOne, outputOne)
    case 'Log':
      return readLog(element)
    case 'Exponent':
      return readExponent(element)
    case 'ASC_CDL':
      return readCdl(element)
    case 'LUT1D':
    case 'LUT3D': {
      const names = element.name === 'LUT1D' ? ['interpolation', 'halfDomain', 'rawHalfs'] : ['interpolation']
      allow(element, names, ['Array'])
      return readClfTable(element, outputOne)
    }
    default:
      return element.refuse(`the process node “${element.name.slice(0, 40)}” is not known here`)
  }
}
