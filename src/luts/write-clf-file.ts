// Text of a CLF file (Academy S-2014-006 / SMPTE ST 2136-1, version 3) from a transform; all bit depths are 32f, so nothing is scaled.
import type {
  CdlNode,
  Channels,
  CubeNode,
  ExponentNode,
  LineNode,
  LogNode,
  RangeNode,
  TransformNode,
} from './colour-transform.ts'

export interface ClfFile {
  /** Unique name of the transform, as the format wants one. */
  readonly id: string
  readonly title: string
  readonly remarks: readonly string[]
  readonly takes: string
  readonly gives: string
  readonly nodes: readonly TransformNode[]
}

const entities: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' }
/** Text of an element or attribute; characters that XML 1.0 cannot hold are left out. */
const escaped = (text: string) =>
  text
    .replace(/[^\t\n\r\u{20}-\u{d7ff}\u{e000}-\u{fffd}\u{10000}-\u{10ffff}]/gu, '')
    .replace(/[&<>"]/g, (letter) => entities[letter])

/** 64-bit numbers as they are; 32-bit ones in nine digits, which bring them back exactly (IEEE 754-2019, 5.12.2). */
const numberText = (value: number) => (value === 0 ? '0' : String(value))
const floatText = (value: number) =>
  Number.isFinite(value)
    ? numberText(Number(value.toPrecision(9)))
    : String(value).replace('Infinity', 'inf').toLowerCase()

function element(
  name: string,
  attributes: Readonly<Record<string, string | number>>,
  lines: readonly string[],
): string[] {
  const said = Object.entries(attributes).map(
    ([key, value]) => ` ${key}="${typeof value === 'number' ? numberText(value) : escaped(value)}"`,
  )
  const open = `<${name}${said.join('')}`
  return lines.length === 0 ? [`${open} />`] : [`${open}>`, ...lines.map((line) => `  ${line}`), `</${name}>`]
}

const process = (name: string, attributes: Readonly<Record<string, string>>, lines: readonly string[]) =>
  element(name, { inBitDepth: '32f', outBitDepth: '32f', ...attributes }, lines)

function matrixLines(matrix: readonly number[], offset: Channels): string[] {
  const hasOffset = offset.some((value) => value !== 0)
  const rows = [0, 1, 2].map((row) =>
    [...matrix.slice(row * 3, row * 3 + 3), ...(hasOffset ? [offset[row]] : [])].map(numberText).join(' '),
  )
  return process('Matrix', {}, element('Array', { dim: hasOffset ? '3 4' : '3 3' }, rows))
}

function rangeLines({ scale, offset, lowest, highest }: RangeNode): string[] {
  const values: [name: string, value: number][] = []
  if (lowest !== null) values.push(['minInValue', (lowest - offset) / scale], ['minOutValue', lowest])
  if (highest !== null) values.push(['maxInValue', (highest - offset) / scale], ['maxOutValue', highest])
  if (values.length === 0)
    values.push(['minInValue', 0], ['minOutValue', offset], ['maxInValue', 1], ['maxOutValue', scale + offset])
  const style = lowest === null && highest === null ? 'noClamp' : 'Clamp'
  return process(
    'Range',
    { style },
    values.map(([name, value]) => `<${name}>${numberText(value)}</${name}>`),
  )
}

function lineLines({ length, halfDomain, data }: LineNode): string[] {
  const rows = Array.from({ length }, (_, i) => Array.from(data.subarray(i * 3, i * 3 + 3), floatText).join(' '))
  const attributes = { interpolation: 'linear', ...(halfDomain ? { halfDomain: 'true' } : {}) }
  return process('LUT1D', attributes, element('Array', { dim: `${length} 3` }, rows))
}

function cubeLines({ size, reading, data }: CubeNode): string[] {
  const rows: string[] = []
  for (let red = 0; red < size; red++)
    for (let green = 0; green < size; green++)
      for (let blue = 0; blue < size; blue++) {
        const at = ((blue * size + green) * size + red) * 3
        rows.push(Array.from(data.subarray(at, at + 3), floatText).join(' '))
      }
  return process('LUT3D', { interpolation: reading }, element('Array', { dim: `${size} ${size} ${size} 3` }, rows))
}

/** Parameters once where all channels share them. */
function perChannel<T>(
  curves: readonly [T, T, T],
  write: (curve: T, channel: Record<string, string>) => string[],
): string[] {
  const same = curves.every((curve) => JSON.stringify(curve) === JSON.stringify(curves[0]))
  return same ? write(curves[0], {}) : curves.flatMap((curve, i) => write(curve, { channel: 'RGB'[i] }))
}

function logLines({ direction, curves }: LogNode): string[] {
  const hasLine = curves[0].linSideBreak !== null
  const plainStyle = direction === 'encode' ? 'linToLog' : 'logToLin'
  const cameraStyle = direction === 'encode' ? 'cameraLinToLog' : 'cameraLogToLin'
  const params = perChannel(curves, ({ linSideBreak, linearSlope, ...curve }, channel) =>
    element(
      'LogParams',
      {
        ...channel,
        ...curve,
        ...(linSideBreak === null ? {} : { linSideBreak }),
        ...(linearSlope === null ? {} : { linearSlope }),
      },
      [],
    ),
  )
  return process('Log', { style: hasLine ? cameraStyle : plainStyle }, params)
}

function exponentLines({ direction, hasLine, negatives, curves }: ExponentNode): string[] {
  const middle = negatives === 'mirror' ? 'Mirror' : negatives === 'pass' && !hasLine ? 'PassThru' : ''
  const style = `${hasLine ? 'monCurve' : 'basic'}${middle}${direction === 'forward' ? 'Fwd' : 'Rev'}`
  const params = perChannel(curves, ({ exponent, offset }, channel) =>
    element('ExponentParams', { ...channel, exponent, ...(hasLine ? { offset } : {}) }, []),
  )
  return process('Exponent', { style }, params)
}

function cdlLines({ direction, clamps, slope, offset, power, saturation }: CdlNode): string[] {
  const style = `${direction === 'forward' ? 'Fwd' : 'Rev'}${clamps ? '' : 'NoClamp'}`
  const values = { Slope: slope, Offset: offset, Power: power }
  const sop = Object.entries(values).map(([name, three]) => `<${name}>${three.map(numberText).join(' ')}</${name}>`)
  return process('ASC_CDL', { style }, [
    ...element('SOPNode', {}, sop),
    ...element('SatNode', {}, [`<Saturation>${numberText(saturation)}</Saturation>`]),
  ])
}

function nodeLines(node: TransformNode): string[] {
  switch (node.kind) {
    case 'matrix':
      return matrixLines(node.matrix, node.offset)
    case 'range':
      return rangeLines(node)
    case 'line':
      return lineLines(node)
    case 'cube':
      return cubeLines(node)
    case 'log':
      return logLines(node)
    case 'exponent':
      return exponentLines(node)
    case 'cdl':
      return cdlLines(node)
  }
}

export function writeClfFile({ id, title, remarks, takes, gives, nodes }: ClfFile): string {
  const said = (name: string, text: string) => `<${name}>${escaped(text)}</${name}>`
  const root = element('ProcessList', { id, ...(title === '' ? {} : { name: title }), compCLFversion: '3' }, [
    ...remarks.map((remark) => said('Description', remark)),
    said('InputDescriptor', takes),
    said('OutputDescriptor', gives),
    ...nodes.flatMap(nodeLines),
  ])
  return `<?xml version="1.0" encoding="UTF-8"?>\n${root.join('\n')}\n`
}
