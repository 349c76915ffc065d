// Small finished pictures of one frame under many descriptions: drawn one below the other into one texture and read back
// together, without blocking. Marks and suggestions differ only in their neutral, so they share one program.
import { type WebGLRenderer, WebGLRenderTarget } from 'three'

import type { PipelineDescription } from '../pipeline/description.ts'
import type { PatchPainter } from './paint-patches.ts'
import type { Pass, Size } from './pass.ts'
import type { Patch } from './patch.ts'

export interface ThumbnailContext {
  readonly renderer: WebGLRenderer
  readonly pass: Pass
  readonly painter: PatchPainter
  readonly largestTexture: number
}

/** The whole frame as one patch. */
export interface ThumbnailSubject {
  readonly patch: Patch
  readonly sensor: Size
}

/** As many pictures of `width × height` as there are descriptions; they must fit below each other into one texture. */
async function drawSheet(
  { renderer, painter }: ThumbnailContext,
  { patch, sensor }: ThumbnailSubject,
  descriptions: readonly PipelineDescription[],
  { width, height }: Size,
): Promise<ImageData[]> {
  const size = { width, height: height * descriptions.length }
  const target = new WebGLRenderTarget(size.width, size.height, { depthBuffer: false })
  descriptions.forEach((description, i) => {
    const frame = { frameWidth: sensor.width, frameHeight: sensor.height, screenHeight: null }
    const placement = { left: 0, top: i * height, zoom: width / sensor.width, ...frame }
    painter.paint({ patches: [patch], description, placement, columns: { from: 0, to: width }, target, size })
  })
  const codes = new Uint8Array(size.width * size.height * 4)
  const reading = renderer.readRenderTargetPixelsAsync(target, 0, 0, size.width, size.height, codes)
  target.dispose()
  await reading
  const bytes = width * height * 4
  return descriptions.map((_, i) => new ImageData(new Uint8ClampedArray(codes.buffer, i * bytes, bytes), width))
}

/** Pictures of `width` pixels and the frame's aspect, one for each description in order. Rejects when the context is lost. */
export async function drawThumbnails(
  context: ThumbnailContext,
  subject: ThumbnailSubject,
  descriptions: readonly PipelineDescription[],
  width: number,
): Promise<ImageData[]> {
  const height = Math.max(1, Math.floor((subject.sensor.height * width) / subject.sensor.width))
  const materials = descriptions.flatMap((description) => context.painter.materials([subject.patch], description))
  await Promise.all([...new Set(materials)].map((material) => context.pass.prepare(material)))
  const perSheet = Math.max(1, Math.floor(context.largestTexture / height))
  const pictures: ImageData[] = []
  for (let first = 0; first < descriptions.length; first += perSheet) {
    const sheet = descriptions.slice(first, first + perSheet)
    pictures.push(...(await drawSheet(context, subject, sheet, { width, height })))
  }
  return pictures
}
