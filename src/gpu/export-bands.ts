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
  readonly rowsPerBand: number
}

/** Widest tile in sensor pixels: with three codes to a pixel it stays below the texture limit of weak devices (our choice). */
const tileWidth = 2048
function* tileBoxes({ sensor, rowsPerBand }: ExportJob): Generator<Rectangle> {
  for (let y = 0; y < sensor.height; y += rowsPerBand) {
    const height = Math.min(rowsPerBand, sensor.height - y)
    for (let x = 0; x < sensor.width; x += tileWidth) {
      yield { x, y, width: Math.min(tileWidth, sensor.width - x), height }
    }
  }
}

/** Drops the fourth sample and puts the tile into its place in the band. */
function copyTile(
  read: Uint8Array | Float32Array,
  { x, width, height }: Rectangle,
  band: Band,
  bandWidth: number,
): void {
  for (let row = 0, from = 0; row < height; row++) {
    let to = (row * bandWidth + x) * 3
    for (let column = 0; column < width; column++, from += 4, to += 3) {
      band.samples[to] = read[from]
      band.samples[to + 1] = read[from + 1]
      band.samples[to + 2] = read[from + 2]
    }
  }
}

/** Draws a tile and starts reading it; the promise brings RGBA codes, rows from top to bottom. */
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
  const done = renderer.readRenderTargetPixelsAsync(target, 0, 0, width, height, read)
  codes.texture.dispose()
  target.dispose()
  return { box, read, done }
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
  let band: Band | null = null
  try {
    for (let tile = start(boxes.next().value); tile;) {
      const following = start(boxes.next().value)
      await tile.done
      if (context.renderer.getContext().isContextLost()) throw new Error('The graphics were reset during the export.')
      const { box, read } = tile
      const size = box.height * width * 3
      band ??= { top: box.y, rows: box.height, samples: job.bits === 8 ? new Uint8Array(size) : new Uint16Array(size) }
      copyTile(read, box, band, width)
      if (box.x + box.width === width) {
        yield band
        band = null
      }
      tile = following
    }
  } finally {
    source.dispose()
  }
}
