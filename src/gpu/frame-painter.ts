// Draws one frame for a request: chooses between overview and tiles, one or two descriptions, whole or half size.
// Everything here belongs to one frame and one context; both can end.
import type { RawShaderMaterial, WebGLRenderer } from 'three'

import type { Frame } from '../frame/frame.ts'
import type { PipelineDescription } from '../pipeline/description.ts'
import type { Capabilities } from './capabilities.ts'
import type { ChainPrograms } from './chain-program.ts'
import { codeSource } from './code-source.ts'
import { createHalfSize, halved } from './half-size.ts'
import { createOverviewTexture, overviewLevel } from './overview-texture.ts'
import { createPatchPainter } from './paint-patches.ts'
import type { Pass } from './pass.ts'
import type { Patch, PatchSource } from './patch.ts'
import type { PictureRequest, PictureView } from './picture-request.ts'
import { drawThumbnails } from './thumbnails.ts'
import { spotsInView } from './tile-spots.ts'
import { createTileStore, type Cover } from './tile-store.ts'

export type PaintedFrame = Pick<Frame, 'sensor' | 'overview'>

/** From this many device pixels per sensor pixel on, sensor pixels are shown as squares. */
const nearestFrom = 2
/** Time the interface may be held up at once while the overview goes to the GPU, in ms (our choice). */
const uploadSliceMs = 16

export interface FramePainter {
  /** Uploads the overview for about a slice of time; true once it can be drawn. */
  load(): boolean
  /** What the view is made of, after making tiles until `budgetPx` sensor pixels are spent. */
  cover(request: PictureRequest, budgetPx: number): Cover
  /** Materials that drawing the cover needs. */
  materials(request: PictureRequest, cover: Cover): readonly RawShaderMaterial[]
  /** Materials that making tiles needs. */
  readonly tileMaterials: readonly RawShaderMaterial[]
  paint(request: PictureRequest, cover: Cover, size: 'whole' | 'half'): void
  /** See `drawThumbnails`. */
  thumbnails(descriptions: readonly PipelineDescription[], width: number): Promise<ImageData[]>
  dispose(): void
}

export interface PaintContext {
  readonly renderer: WebGLRenderer
  readonly pass: Pass
  readonly programs: ChainPrograms
  readonly capabilities: Capabilities
}

export function createFramePainter(context: PaintContext, { sensor, overview }: PaintedFrame): FramePainter {
  const { renderer, pass, programs, capabilities } = context
  const codes = codeSource(sensor, pass, capabilities.export32F)
  const tiles = createTileStore(pass, sensor, codes, capabilities.tiles16F)
  const painter = createPatchPainter(pass, programs, codes)
  const half = createHalfSize(pass)
  const { texture, upload } = createOverviewTexture(renderer, overview, capabilities.tiles16F)

  const overviewAt = ({ zoom }: Pick<PictureView, 'zoom'>): PatchSource => ({
    kind: 'texture',
    texture,
    x: 0,
    y: 0,
    scale: overview.scale,
    level: capabilities.tiles16F ? overviewLevel(zoom, overview.scale) : 0,
    nearest: false,
  })

  const whole = (source: PatchSource): Patch => ({
    left: 0,
    top: 0,
    right: sensor.width,
    bottom: sensor.height,
    source,
  })

  function cover({ description, view }: PictureRequest, budgetPx: number): Cover {
    const standIn = overviewAt(view)
    if (view.zoom * overview.scale <= 1) return { patches: [whole(standIn)], unfinished: 0 }
    const spots = spotsInView(view, sensor)
    return tiles.cover({ spots, gains: description.mosaicGains, nearest: view.zoom >= nearestFrom, standIn }, budgetPx)
  }

  const halves = ({ description, second, view }: PictureRequest) => {
    const divide = second ? Math.round(second.divide * view.width) : view.width
    const left = { description, columns: { from: 0, to: divide } }
    return second ? [left, { description: second.description, columns: { from: divide, to: view.width } }] : [left]
  }

  const load = () => upload(uploadSliceMs)

  return {
    load,
    cover,
    materials(request, { patches }) {
      const views = halves(request).flatMap(({ description }) => painter.materials(patches, description))
      // Without tiles codes are demosaiced at every draw.
      const tilesAnew = capabilities.tiles16F ? [] : codes.steps
      return [...views, half.material, ...tilesAnew]
    },
    tileMaterials: tiles.materials,
    paint(request, { patches }, size) {
      const { view, clipping } = request
      const target = size === 'half' ? half.target(view) : null
      const drawn = target ?? view
      const full = { ...view, frameWidth: sensor.width, frameHeight: sensor.height, screenHeight: view.height }
      const placement = target ? halved(full, target.height) : full
      renderer.setRenderTarget(target)
      renderer.clear()
      for (const { description, columns } of halves(request)) {
        const share = target ? 0.5 : 1
        const range = { from: columns.from * share, to: columns.to * share }
        painter.paint({ patches, description, placement, columns: range, target, size: drawn, clipping })
      }
      if (target) half.show(view)
    },
    async thumbnails(descriptions, width) {
      while (!load()) await new Promise((resolve) => setTimeout(resolve))
      const subject = { patch: whole(overviewAt({ zoom: width / sensor.width })), sensor }
      const { largestTexture } = capabilities
      return drawThumbnails({ renderer, pass, painter, largestTexture }, subject, descriptions, width)
    },
    dispose() {
      tiles.dispose()
      codes.dispose()
      half.dispose()
      texture.dispose()
    },
  }
}
