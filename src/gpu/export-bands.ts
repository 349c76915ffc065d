// The finished picture at full resolution, band by band, on the GPU: mosaic in, demosaiced and finished in 32-bit float,
// quantised codes out. While one tile is read back the next is already being computed.
import { FloatType, UnsignedByteType, type WebGLRenderer, WebGLRenderTarget } from 'three'

import type { SensorData } from '../frame/frame.ts'
import type { PipelineDescription } from '../pipeline/description.ts'
import type { Rectangle } from '../sensor/rectangle.ts'
import type { ChainPrograms } from './chain-program.ts'
import { type CodeSource, codeSource } from './code-source.ts'
import { type Pass, setUniforms } from './pass.ts'
import { writePlacement } from './place-uniforms.ts'
import { exportStage } from './stages.ts'

export type BitDepth = 8 | 16

/** Rows `top` … `top + rows − 1` of the picture; samples are interleaved RGB. */
export interface Band {
  readonly top: number
  readonly rows: number
  readonly samples: Uint8Array<ArrayBuffer> | Uint16Array<ArrayBuffer>
}

export interface ExportContext {
  readonly renderer: WebGLRenderer
  readonly pass: Pass
  readonly programs: ChainPrograms
}

export interface ExportJob {
  readonly sensor: SensorData
  readonly description: PipelineDescription
  readonly bits: BitDepth
  /** Rows of every band but the last. */
  readonly rowsPerBand: number
}

/** Widest tile in sensor pixels: with three codes to a pixel it stays below the texture limit of weak devices (our choice). */
const tileWidth = 2048
/** Rows that tiles have where bands are low, so that waiting for results does not take longer than computing (our choice). */
const leastTileHeight = 512

/** Tiles row by row; their height is a whole number of bands. */
function* tileBoxes({ sensor, rowsPerBand }: ExportJob): Generator<Rectangle> {
  const rows = rowsPerBand * Math.ceil(leastTileHeight / rowsPerBand)
  for (let y = 0; y < sensor.height; y += rows) {
    const height = Math.min(rows, sensor.height - y)
    for (let x = 0; x < sensor.width; x += tileWidth) {
      yield { x, y, width: Math.min(tileWidth, sensor.width - x), height }
    }
  }
}

/** A row of tiles as bands. */
function* bandsOf(row: Band, rowsPerBand: number): Generator<Band> {
  const samplesPerRow = row.samples.length / row.rows
  for (let first = 0; first < row.rows; first += rowsPerBand) {
    const rows = Math.min(rowsPerBand, row.rows - first)
    yield {
      top: row.top + first,
      rows,
      samples: row.samples.slice(first * samplesPerRow, (first + rows) * samplesPerRow),
    }
  }
}

/** Drops the fourth sample and puts the tile into its place in the row of tiles. */
function copyTile(read: Uint8Array | Float32Array, { x, width, height }: Rectangle, row: Band, rowWidth: number): void {
  for (let y = 0, from = 0; y < height; y++) {
    let to = (y * rowWidth + x) * 3
    for (let column = 0; column < width; column++, from += 4, to += 3) {
      row.samples[to] = read[from]
      row.samples[to + 1] = read[from + 1]
      row.samples[to + 2] = read[from + 2]
    }
  }
}

/** Draws a tile and starts reading it: RGBA codes, rows from top to bottom. The promise never rejects but brings the failure. */
function startTile({ renderer, pass, programs }: ExportContext, job: ExportJob, source: CodeSource, box: Rectangle) {
  const { sensor, description, bits } = job
  const { x, y, width, height } = box
  const codes = source.load(box, 0)
  const type = bits === 8 ? UnsignedByteType : FloatType
  const target = new WebGLRenderTarget(width, height, { type, depthBuffer: false })
  const material = programs.material(exportStage(source), description)
  const frameSize = { frameWidth: sensor.width, frameHeight: sensor.height }
  writePlacement(material.uniforms, { left: -x, top: -y, zoom: 1, ...frameSize, screenHeight: null })
  source.write(material.uniforms, codes, description.mosaicGains)
  setUniforms(material.uniforms, { largestCode: 2 ** bits - 1, codeScale: bits === 8 ? 1 / 255 : 1 })
  pass.draw(material, target, target)
  const read = bits === 8 ? new Uint8Array(width * height * 4) : new Float32Array(width * height * 4)
  const failure = renderer.readRenderTargetPixelsAsync(target, 0, 0, width, height, read).then(
    () => null,
    (reason: unknown) => reason,
  )
  codes.texture.dispose()
  target.dispose()
  return { box, read, failure }
}

/**
 * Bands in order, `rowsPerBand` rows each but the last. Needs a context that renders to 32-bit float. Throws an Error when
 * the context is lost on the way; bands given out before are good.
 */
export async function* exportBands(context: ExportContext, job: ExportJob): AsyncGenerator<Band> {
  const { width } = job.sensor
  const source = codeSource(job.sensor, context.pass, true)
  const boxes = tileBoxes(job)
  const start = (box: Rectangle | undefined) => box && startTile(context, job, source, box)
  let row: Band | null = null
  try {
    for (let tile = start(boxes.next().value); tile;) {
      const following = start(boxes.next().value)
      const failure = await tile.failure
      if (context.renderer.getContext().isContextLost()) throw new Error('The graphics were reset during the export.')
      if (failure) throw failure
      const { box, read } = tile
      const size = box.height * width * 3
      row ??= { top: box.y, rows: box.height, samples: job.bits === 8 ? new Uint8Array(size) : new Uint16Array(size) }
      copyTile(read, box, row, width)
      if (box.x + box.width === width) {
        yield* bandsOf(row, job.rowsPerBand)
        row = null
      }
      tile = following
    }
  } finally {
    source.dispose()
  }
}
