// CLF (Academy S-2014-006 / SMPTE ST 2136-1) held to the colour engine of opencolorio-tools, node by node and style by style, at
// all bit depths; and refusals by line.
import { describe, expect, test } from 'vitest'
import { applyTransform } from '../../src/luts/apply-transform.ts'
import type { ColourTransform } from '../../src/luts/colour-transform.ts'
import { readClfFile } from '../../src/luts/read-clf-file.ts'
import { writeClfFile } from '../../src/luts/write-clf-file.ts'
import { engineColours, hasColourEngine, placed } from '../support/outside-colour-engine.ts'
import { largestApart } from '../support/sample-places.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'

const folder = temporaryFolder()
const file = (nodes: string, version = '3') =>
  `<?xml version="1.0" encoding="UTF-8"?>\n<ProcessList id="a" compCLFversion="${version}">\n${nodes}\n</ProcessList>\n`

/** Negative, dark, plain and bright ones. */
const places = [
  [0.18, 0.18, 0.18],
  [-0.05, 0.4, 0.9],
  [0.003, 0.001, 0.02],
  [0.7, 0.55, 0.25],
  [1.4, 0.98, 3],
  [0, 0.5, 1],
]

function coloursOf(transform: ColourTransform): number[][] {
  return places.map((place) => {
    const rgb = Float64Array.from(place)
    applyTransform(transform, rgb)
    return [...rgb]
  })
}

const float = 'inBitDepth="32f" outBitDepth="32f"'
const log = (style: string, params = '') => `<Log ${float} style="${style}">${params}</Log>`
const camera = '<LogParams base="10" logSideSlope="0.25" logSideOffset="0.4" linSideSlope="5.5" linSideOffset="0.05"'
const curve = (style: string, params: string) =>
  `<Exponent ${float} style="${style}"><ExponentParams ${params}/></Exponent>`
const cdl = (style: string) =>
  `<ASC_CDL ${float} style="${style}"><SOPNode><Slope>1.1 0.9 1.05</Slope><Offset>0.02 -0.01 0.03</Offset>
  <Power>1.2 0.8 1.1</Power></SOPNode><SatNode><Saturation>1.3</Saturation></SatNode></ASC_CDL>`
const lut1d = '<Array dim="5 3">0 10 0\n40 70 20\n128 120 110\n200 180 190\n255 240 250</Array>'
const corners = Array.from({ length: 27 }, (_, i) => `${(i * 37) % 256} ${(i * 91) % 256} ${(i * 53) % 256}`).join('\n')
const lut3d = (reading: string) =>
  `<LUT3D inBitDepth="32f" outBitDepth="8i" ${reading}><Array dim="3 3 3 3">${corners}</Array></LUT3D>`
const halves = Array.from({ length: 65536 }, (_, bits) => (bits & 0x8000 ? 0 : Math.min(bits, 0x7bff)) / 32768).join(
  ' ',
)

const nodes: Record<string, string> = {
  'matrix of 3 columns': `<Matrix ${float}><Array dim="3 3">0.9 0.1 0 0.05 0.9 0.05 0 0.2 0.8</Array></Matrix>`,
  'matrix of 4 columns': `<Matrix ${float}><Array dim="3 4">0.9 0.1 0 .01 0.05 0.9 0.05 -.02 0 0.2 0.8 1e-1</Array></Matrix>`,
  'range with both ends': `<Range ${float}><minInValue>0.1</minInValue><maxInValue>0.8</maxInValue><minOutValue>0.2</minOutValue><maxOutValue>0.7</maxOutValue></Range>`,
  'range without clamping': `<Range ${float} style="noClamp"><minInValue>0.1</minInValue><maxInValue>0.8</maxInValue><minOutValue>0.2</minOutValue><maxOutValue>0.7</maxOutValue></Range>`,
  'range with a lower end': `<Range ${float}><minInValue>0.1</minInValue><minOutValue>0.1</minOutValue></Range>`,
  'range with an upper end': `<Range ${float}><maxInValue>0.6</maxInValue><maxOutValue>0.6</maxOutValue></Range>`,
  log10: log('log10'),
  antiLog10: log('antiLog10'),
  log2: log('log2'),
  antiLog2: log('antiLog2'),
  linToLog: log('linToLog', `${camera}/>`),
  logToLin: log('logToLin', `${camera}/>`),
  cameraLinToLog: log('cameraLinToLog', `${camera} linSideBreak="0.011"/>`),
  'cameraLinToLog with a slope': log('cameraLinToLog', `${camera} linSideBreak="0.011" linearSlope="5"/>`),
  cameraLogToLin: log('cameraLogToLin', `${camera} linSideBreak="0.011"/>`),
  'log per channel': log(
    'linToLog',
    `<LogParams channel="R"/><LogParams channel="G" linSideSlope="3"/><LogParams channel="B" logSideSlope="0.2"/>`,
  ),
  basicFwd: curve('basicFwd', 'exponent="2.2"'),
  basicRev: curve('basicRev', 'exponent="2.2"'),
  basicMirrorFwd: curve('basicMirrorFwd', 'exponent="2.2"'),
  basicMirrorRev: curve('basicMirrorRev', 'exponent="3"'),
  basicPassThruFwd: curve('basicPassThruFwd', 'exponent="2.2"'),
  basicPassThruRev: curve('basicPassThruRev', 'exponent="2.2"'),
  monCurveFwd: curve('monCurveFwd', 'exponent="2.4" offset="0.055"'),
  monCurveRev: curve('monCurveRev', 'exponent="2.4" offset="0.055"'),
  monCurveMirrorFwd: curve('monCurveMirrorFwd', 'exponent="3" offset="0.16"'),
  monCurveMirrorRev: curve('monCurveMirrorRev', 'exponent="3" offset="0.16"'),
  'exponent of one channel': curve('basicFwd', 'exponent="1.5" channel="G"'),
  'ASC_CDL Fwd': cdl('Fwd'),
  'ASC_CDL Rev': cdl('Rev'),
  'ASC_CDL FwdNoClamp': cdl('FwdNoClamp'),
  'ASC_CDL RevNoClamp': cdl('RevNoClamp'),
  'LUT1D of 3 columns': `<LUT1D inBitDepth="32f" outBitDepth="8i">${lut1d}</LUT1D>`,
  'LUT1D of 1 column': `<LUT1D ${float} interpolation="linear"><Array dim="4 1">0 .2 .7 1</Array></LUT1D>`,
  'LUT1D over all halves': `<LUT1D ${float} halfDomain="true"><Array dim="65536 1">${halves}</Array></LUT1D>`,
  'LUT3D, tetrahedral': lut3d('interpolation="tetrahedral"'),
  'LUT3D, trilinear': lut3d('interpolation="trilinear"'),
}
for (const [depth, one] of [
  ['8i', 255],
  ['10i', 1023],
  ['12i', 4095],
  ['16i', 65535],
  ['16f', 1],
] as const) {
  nodes[`matrix into ${depth}`] =
    `<Matrix inBitDepth="32f" outBitDepth="${depth}"><Array dim="3 3">${one} 0 0 0 ${one / 2} 0 0 ${one / 4} ${one / 2}</Array></Matrix>`
  nodes[`range from ${depth}`] =
    `<Range inBitDepth="${depth}" outBitDepth="32f"><minInValue>0</minInValue><maxInValue>${one}</maxInValue><minOutValue>0</minOutValue><maxOutValue>1</maxOutValue></Range>`
}

describe.skipIf(!hasColourEngine)('the outside engine agrees (skipped without opencolorio-tools)', () => {
  test.each(Object.entries(nodes))('%s', (name, node) => {
    const text = file(node)
    const read = readClfFile(text, name)
    const wanted = engineColours(placed(folder, 'node.clf', text), places)
    expect(largestApart(coloursOf(read), wanted)).toBeLessThan(2e-6)
    const again = writeClfFile({ id: 'b', title: '', remarks: [], takes: 'x', gives: 'y', nodes: read.nodes })
    expect(largestApart(engineColours(placed(folder, 'again.clf', again), places), wanted)).toBeLessThan(2e-6)
    expect(coloursOf(readClfFile(again, name))).toEqual(coloursOf(read))
  })
})

test('a chain of nodes, descriptions, an older version, comments and CRLF', () => {
  const text = file(
    '<!-- c --><Description>Leaves &amp; sky</Description><Info><Anything a="b"><C/></Anything></Info><InputDescriptor>linear</InputDescriptor>' +
      '<Matrix inBitDepth="8i" outBitDepth="10i"><Array dim="3 3 3">4 0 0 0 4 0 0 0 4</Array></Matrix>' +
      '<Range inBitDepth="10i" outBitDepth="32f"><minInValue>0</minInValue><maxInValue>1023</maxInValue><minOutValue>0</minOutValue><maxOutValue>1</maxOutValue></Range>',
    '1.2',
  ).replaceAll('\n', '\r\n')
  const { remarks, nodes: read } = readClfFile(`\uFEFF${text}`, 'a.clf')
  expect(remarks).toEqual(['Leaves & sky', 'Takes: linear'])
  expect(read.map(({ kind }) => kind)).toEqual(['matrix', 'range'])
  expect(read[0]).toMatchObject({ matrix: [1020 / 1023, 0, 0, 0, 1020 / 1023, 0, 0, 0, 1020 / 1023] })
})

const matrix = nodes['matrix of 3 columns']
const refusals: readonly (readonly [text: string, reason: RegExp])[] = [
  ['', /^leaf\.clf cannot be used as a colour table.*no well-formed XML/],
  ['<ProcessList compCLFversion="3">\n<Matrix>', /line 2: it is no well-formed XML/],
  ['<Grade/>', /line 1: its outermost element is Grade, not ProcessList/],
  ['<ProcessList id="a"/>', /compCLFversion/],
  [file('', '4'), /version 4 of the format is not known/],
  [file(''), /holds no process node/],
  [file(`${matrix}\n<Sparkle ${float}/>`), /line 4: the process node “Sparkle” is not known here/],
  [file('<IndexMap dim="2">0@0 1@1</IndexMap>'), /line 3: IndexMap needs the attribute “inBitDepth”/],
  [file(matrix.replace('0.9', '0,9')), /line 3: “0,9” is not a finite number/],
  [file(matrix.replace('0.9 ', '')), /line 3: Array must hold 9 numbers, not 8/],
  [file(matrix.replace('0.9', 'nan')), /“nan” is not a finite number/],
  [file(matrix.replace('0.9', '1e999')), /“1e999” is not a finite number/],
  [file(matrix.replace('<Matrix', '<Matrix bypass="true"')), /the attribute “bypass” of Matrix is not known/],
  [file(matrix.replace('32f" out', '33f" out')), /inBitDepth “33f”; known are 8i, 10i/],
  [
    file(matrix.replace('outBitDepth="32f"', 'outBitDepth="8i"') + matrix),
    /Matrix takes 32f, but what comes before it gives 8i/,
  ],
  [file(log('cube')), /Log has the style “cube”; known are log10/],
  [file(curve('basicFwd', 'exponent="-1"')), /the exponent must lie in 0.01…100/],
  [file(`<LUT3D ${float}><Array dim="2 2 3 3">0</Array></LUT3D>`), /as deep as it is wide/],
  [file(`<LUT3D ${float}><Array dim="300 300 300 3">0</Array></LUT3D>`), /2 to 129 points a side can be read, not 300/],
  [file(`<LUT1D ${float} halfDomain="true"><Array dim="4 1">0 1 2 3</Array></LUT1D>`), /65536 entries/],
  [`${'<a>'.repeat(20000)}${'</a>'.repeat(20000)}`, /nested too deeply|not ProcessList/],
]
test.each(refusals)('%# is refused with line and reason', (text, reason) => {
  expect(() => readClfFile(text, 'leaf.clf')).toThrow(reason)
})

/** What a mistyped file holds: text where the schema of S-2014-006 has elements only, values with blanks, an unknown encoding. */
const mistyped: readonly (readonly [what: string, text: string, reason: RegExp])[] = [
  ['text among nodes', file(`${matrix}\n0.2 0 0.8`), /line 2: “0\.2 0 0\.8” in ProcessList belongs to no element/],
  ['a tag half torn off', file(`Matrix ${float}>\n${matrix}`), /in ProcessList belongs to no element/],
  ['text in a node', file(matrix.replace('</Matrix>', '1e999</Matrix>')), /line 3: “1e999” in Matrix belongs to/],
  [
    'text in a part of a node',
    file(cdl('Fwd').replace('<Slope>', '# <Slope>')),
    /“#” in SOPNode belongs to no element/,
  ],
  ['a blank in a depth', file(matrix.replace('outBitDepth="32f"', 'outBitDepth="32f "')), /outBitDepth “32f ”; known/],
  ['a blank in a style', file(log(' log10')), /the style “ log10”; known are log10/],
  ['an unknown encoding', file(matrix).replace('UTF-8', 'UTFF-8'), /line 1: its encoding “UTFF-8” is not known here/],
]
/** The same, which the outside engine passes over with a warning. */
const mistypedUnseen: typeof mistyped = [
  [
    'text in parameters',
    file(log('cameraLinToLog', `${camera} linSideBreak="0.01">b</LogParams>`)),
    /“b” in LogParams/,
  ],
  ['an element among numbers', file(matrix.replace('0.1', '0.1 <b/>')), /line 3: b is not known inside Array/],
]
test.each([...mistyped, ...mistypedUnseen])('%s is refused', (_, text, reason) => {
  expect(() => readClfFile(text, 'leaf.clf')).toThrow(reason)
})

describe.skipIf(!hasColourEngine)('the outside engine refuses it too (skipped without opencolorio-tools)', () => {
  test.each(mistyped)('%s', (_, text) => {
    expect(() => engineColours(placed(folder, 'mistyped.clf', text), [[0, 0, 0]])).toThrow(/could not be loaded/)
  })
})
