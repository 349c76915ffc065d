// Device links as an outside colour engine (Little CMS, through liblcms2-utils) applies them, against the chain they were made of.
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe as group, expect, test } from 'vitest'
import { ciede2000 } from '../../src/colour/ciede2000.ts'
import { workingToLab } from '../../src/colour/cielab.ts'
import { RED_BLUE_EXCHANGE } from '../../src/colour/mix-matrices.ts'
import { OUTPUT_SPACES, type OutputSpaceId } from '../../src/colour/output-space.ts'
import { decodeFromTable, encodeForTable, TABLE_ENCODINGS } from '../../src/colour/table-encoding.ts'
import { addStep } from '../../src/edits/stack.ts'
import { asLinked } from '../../src/export/icc-device-link.ts'
import { tableFile, type TableFileSettings } from '../../src/export/table-file.ts'
import { bakeCube } from '../../src/luts/bake-cube.ts'
import { transform } from '../../src/math/mat3.ts'
import { readCube } from '../../src/math/read-table.ts'
import { describe } from '../../src/pipeline/describe.ts'
import { pointwiseMap, stepsOf } from '../../src/pipeline/pointwise-map.ts'
import { plainFacts } from '../support/apply-operation.ts'
import { hasTool, readMetadata, say, structureFaults } from '../support/outside-tools.ts'
import { evenPlaces, largestApart } from '../support/sample-places.ts'
import { syntheticSamples } from '../support/synthetic-picture.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'
import { exportToFile } from './export-job.ts'

const folder = temporaryFolder()

let chain = addStep([], 'neutral', { redStops: -1.7, blueStops: 0.9 })
chain = addStep(chain, 'channelMix', { rows: RED_BLUE_EXCHANGE })
chain = addStep(chain, 'hueTurn', { angleDeg: 40 })
chain = addStep(chain, 'exposureContrast', { exposureEv: -0.3, contrast: 0.3, shoulder: 0.5 })
const description = describe(addStep(chain, 'outputTransform'), plainFacts)
const stepIds = ['channelMix-1', 'hueTurn-1', 'exposureContrast-1']
const direct = pointwiseMap(stepsOf(description, stepIds))

function placedLink(encoding: OutputSpaceId, size: TableFileSettings['size']): string {
  const settings = { format: 'icc', size, encoding, title: 'Lower meadow', stepIds } as const
  const path = join(folder, `${encoding}-${size}.icc`)
  writeFileSync(path, tableFile(description, settings, new Float64Array(6)).content)
  return path
}

/** Colours 0…1 that the engine makes of colours 0…1; it speaks in 0…255 with four decimals. */
function linked(path: string, places: readonly number[][]): number[][] {
  const input = `${places.map((rgb) => rgb.map((value) => value * 255).join(' ')).join('\n')}\n`
  const numbers = say('transicc', ['-n', `-l${path}`, '-c0'], input)
    .trim()
    .split(/\s+/)
    .map((word) => Number(word) / 255)
  return places.map((_, i) => numbers.slice(3 * i, 3 * i + 3))
}

const spaces = Object.keys(OUTPUT_SPACES) as OutputSpaceId[]
const cases = spaces.flatMap((space) => ([17, 33, 65] as const).map((size) => [space, size] as const))

const toLinear = (space: OutputSpaceId, coded: readonly number[]) => {
  const encoding = TABLE_ENCODINGS[space]
  const [r, g, b] = coded.map((value) => decodeFromTable(encoding, value))
  return Float64Array.from(transform(encoding.toWorking, [r, g, b]))
}

/** 1,000 colours of a space that the chain keeps within it, in whole codes of 16 bits, in which the engine reads a cube of two bytes. */
function thousandWithin(space: OutputSpaceId): number[][] {
  const encoding = TABLE_ENCODINGS[space]
  const places = evenPlaces(2400).map((place) => place.map((value) => Math.round(value * 65535) / 65535))
  const within = places.filter((place) => {
    const rgb = toLinear(space, place)
    direct(rgb)
    const given = transform(encoding.fromWorking, [rgb[0], rgb[1], rgb[2]])
    return given.map((value) => encodeForTable(encoding, value)).every((value) => value >= 0 && value <= 1)
  })
  return within.slice(0, 1000)
}

const readHere = (space: OutputSpaceId, size: number) => {
  const cube = asLinked(bakeCube(size, TABLE_ENCODINGS[space], direct))
  return (place: readonly number[]) => {
    const rgb = Float64Array.from(place)
    readCube(cube, size, rgb)
    return [...rgb]
  }
}

group.skipIf(!hasTool('transicc'))('Little CMS (skipped without transicc)', () => {
  test.each(cases)('%s with %i points: 1,000 colours as they are read here, near those of the chain', (space, size) => {
    const places = thousandWithin(space)
    const given = linked(placedLink(space, size), places)
    // One code of the table, and the four decimals of 255.
    expect(largestApart(given, places.map(readHere(space, size)))).toBeLessThan(2 / 65535)

    const apart = places.map((place, i) => {
      const wanted = toLinear(space, place)
      direct(wanted)
      return ciede2000(workingToLab(wanted), workingToLab(toLinear(space, given[i])))
    })
    apart.sort((a, b) => a - b)
    const mean = apart.reduce((sum, value) => sum + value, 0) / apart.length
    const [p99, largest] = [apart[989], apart[999]]
    console.log(`${space} ${size}: ΔE00 mean ${mean.toFixed(3)}, p99 ${p99.toFixed(2)}, largest ${largest.toFixed(2)}`)
    // Our choice: the least difference that is seen side by side is about 1.
    expect(p99).toBeLessThan(1)
  })

  test('beyond what a space holds, colours end at its edge', () => {
    const [ended] = linked(placedLink('srgb', 33), [[0, 1, 0]])
    expect(Math.min(...ended)).toBe(0)
  })
})

group.skipIf(!hasTool('tificc') || !hasTool('vips'))('pictures (skipped without tificc and vips)', () => {
  // Either the engine works out every pixel (-c0), or it first makes a cube of 33 points and its own arithmetic of 16 bits, as it does
  // by itself (-c1). The first is held to a rounding or two; the second, for which the engine gives no bound, only in the mean.
  test.each([
    ['tiff16', 16, '-c0', 1, 0.5],
    ['tiff16', 16, '-c1', 8, 1],
    ['tiff8', 8, '-c0', 2, 0.5],
    ['tiff8', 8, '-c1', Infinity, 1],
  ] as const)('a %s picture is changed as the link says', async (format, bits, way, most, mostMean) => {
    const link = placedLink('srgb', 33)
    const [before, after] = ['before', 'after'].map((name) => join(folder, `${name}-${bits}${way}.tif`))
    await exportToFile(before, { format })
    say('tificc', [`-l${link}`, `-w${bits}`, way, before, after])
    say('vips', ['rawsave', after, `${after}.raw`])
    const raw = readFileSync(`${after}.raw`)
    const codes = bits === 16 ? new Uint16Array(new Uint8Array(raw).buffer) : new Uint8Array(raw)
    const from = syntheticSamples(301, 203, bits)
    const one = 2 ** bits - 1
    const read = readHere('srgb', 33)
    const apart: number[] = []
    for (let i = 0; i < from.length; i += 3 * 7) {
      const wanted = read([from[i] / one, from[i + 1] / one, from[i + 2] / one])
      wanted.forEach((value, c) => apart.push(Math.abs(value * one - codes[i + c])))
    }
    expect(codes.length).toBe(from.length)
    const mean = apart.reduce((sum, value) => sum + value, 0) / apart.length
    const largest = Math.max(...apart)
    console.log(`${format} ${way}: ${mean.toFixed(2)} codes in the mean, ${largest.toFixed(2)} at most, of ${one}`)
    expect(largest).toBeLessThan(most)
    expect(mean).toBeLessThan(mostMean)
  })
})

test.skipIf(!hasTool('exiftool'))('exiftool finds header and tags in order (skipped without exiftool)', () => {
  const path = placedLink('display-p3', 17)
  expect(structureFaults(path)).toEqual([])
  // Signatures and fields of ICC.1:2022, 7.2 and 8.7.
  expect(readMetadata(path)).toMatchObject({
    'ICC-header:ProfileVersion': 0x0440,
    'ICC-header:ProfileClass': 'link',
    'ICC-header:ColorSpaceData': 'RGB ',
    'ICC-header:ProfileConnectionSpace': 'RGB ',
    'ICC-header:ProfileFileSignature': 'acsp',
    'ICC_Profile:ProfileDescription': 'Lower meadow (Display P3 in and out)',
  })
})

test('the four tags of its class, each on a multiple of four bytes and within the file (ICC.1:2022, 7.3 and 8.7)', () => {
  const bytes = readFileSync(placedLink('romm', 17))
  expect(bytes.readUInt32BE(0)).toBe(bytes.length)
  const tags = Array.from({ length: bytes.readUInt32BE(128) }, (_, i) => {
    const at = 132 + 12 * i
    const [offset, length] = [bytes.readUInt32BE(at + 4), bytes.readUInt32BE(at + 8)]
    expect(offset % 4).toBe(0)
    expect(offset + length).toBeLessThanOrEqual(bytes.length)
    return bytes.toString('latin1', at, at + 4)
  })
  expect(tags).toEqual(['desc', 'cprt', 'pseq', 'A2B0'])
})
