// The probe, by which levels are found where no tag tells them: on synthetic files whose tags are kept from it.
import { beforeAll, expect, it } from 'vitest'
import type { LibRaw } from '../../src/decode/libraw.ts'
import { startLibRawInNode } from '../../src/decode/libraw-in-node.ts'
import { withOpenedFile } from '../../src/decode/opened-file.ts'
import { probeSettings } from '../../src/decode/probe-layout.ts'
import { type ReadSensor, readSensor } from '../../src/decode/read-sensor.ts'
import type { CfaColour, MosaicData } from '../../src/frame/frame.ts'
import { writeDng } from '../support/synthetic-dng.ts'
import { bayer, evenBlack, makeMosaic, oneChannel, type Scene, sixBySix } from '../support/synthetic-sensor.ts'

let libraw: LibRaw
beforeAll(async () => {
  libraw = await startLibRawInNode()
})

/** Read without its tags. */
function probe(mosaic: MosaicData, orientation = 1): ReadSensor {
  const cfa = mosaic.cfa.columns === 1 ? undefined : mosaic.cfa
  const bytes = writeDng({ ...mosaic, cfa, orientation })
  const source = { libraw, fileName: 'pond.dng', bytes }
  return withOpenedFile(source, probeSettings(0, 0), (opened) => readSensor(source, opened, []))
}

const size = { width: 130, height: 110 }
const light: Scene['light'] = (x, y, colour) => 0.2 + colour / 10 + ((x * 3 + y * 5) % 17) / 40
const uneven = { columns: 2, rows: 2, codes: [512, 400, 620, 505] }

it.each([
  ...['0112', '2110', '1021', '1201'].map((phase) => ({
    name: phase,
    cfa: { ...bayer, colours: [...phase].map(Number) as CfaColour[] },
    black: uneven,
  })),
  { name: '6×6', cfa: sixBySix, black: evenBlack(400) },
])('finds colours, black and white: $name', ({ cfa, black }) => {
  const mosaic = makeMosaic({ ...size, cfa, light, black, white: 15000 })
  const { sensor, warnings } = probe(mosaic)
  expect(sensor).toEqual(mosaic)
  expect(warnings).toEqual([])
})

it('finds black of one channel', () => {
  const mosaic = makeMosaic({ ...size, cfa: oneChannel, light: (x) => x / 200, white: 15000 })
  expect(probe(mosaic).sensor).toEqual(mosaic)
})

it('knows the size of a frame on its side', () => {
  const { sensor } = probe(makeMosaic({ ...size, light, black: uneven }), 6)
  expect([sensor.width, sensor.height]).toEqual([110, 130])
})

it('moves on where a corner is as dark as black', () => {
  const night: Scene['light'] = (x, y, colour) => (x < 60 || y < 50 ? -0.01 : light(x, y, colour))
  const mosaic = makeMosaic({ ...size, light: night, black: uneven, white: 15000 })
  const { sensor, warnings } = probe(mosaic)
  expect(sensor).toEqual(mosaic)
  expect(warnings).toEqual([])
})

it('says so where everything is dark', () => {
  const { sensor, warnings } = probe(makeMosaic({ ...size, light: () => -0.01 }))
  expect(sensor.kind).toBe('mosaic')
  expect(warnings).toEqual(['The picture is too dark to tell black for every photosite.'])
})
