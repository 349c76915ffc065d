// The picture on the bench's canvas: takes requests as fast as they come, draws at most one per animation frame, and
// follows up until the view is complete. The CPU keeps all truth, so a lost context costs only a redraw.
import { Color } from 'three'

import type { PipelineDescription } from '../pipeline/description.ts'
import { createCanvasContext } from './canvas-context.ts'
import { type Capabilities, detectCapabilities } from './capabilities.ts'
import { createChainPrograms } from './chain-program.ts'
import { createDrawTimer } from './draw-timer.ts'
import { createFramePainter, type FramePainter, type PaintedFrame } from './frame-painter.ts'
import { createPass } from './pass.ts'
import type { PictureRequest } from './picture-request.ts'
import { createPreparation } from './preparation.ts'
import type { Cover } from './tile-store.ts'

/** Rest after which a moving picture is completed on slow graphics, in ms; common practice, no source. */
const restMs = 150
/** Sensor pixels demosaiced per animation frame, so that none takes long (our choice). */
const tilePxPerDraw = 4 * 2 ** 20
const tilePxPerSlowDraw = 2 ** 20

export interface PictureOptions {
  /** Encoded grey around the picture, 0…1. */
  readonly surround: number
  /** Abilities of the context to do without, see `detectCapabilities`. */
  readonly withhold?: Parameters<typeof detectCapabilities>[1]
  /** Called once after each drawing that reached the canvas. */
  readonly onDrawn?: () => void
}

export interface PictureRenderer {
  readonly capabilities: Capabilities
  /** Gives the canvas its size in device pixels while there is no frame, so that the first drawing need not: it takes a while. */
  fit(width: number, height: number): void
  /** Shows another frame from the next drawing on; null shows the surround only. */
  setFrame(frame: PaintedFrame | null): void
  /** Draws at the next animation frame; of several requests only the last counts. */
  draw(request: PictureRequest): void
  /**
   * Small finished pictures of the frame, `width` pixels wide, one for each description in order; encoded as the
   * descriptions say. Null when there is no frame, or when it changed or the context was lost meanwhile.
   */
  thumbnails(descriptions: readonly PipelineDescription[], width: number): Promise<ImageData[] | null>
  /** Resolves when the last request is drawn completely: all tiles, at full size. */
  settled(): Promise<void>
  dispose(): void
}

/** Throws an Error with a sentence for the user when the canvas cannot have a WebGL2 context. */
export function createPictureRenderer(canvas: HTMLCanvasElement, options: PictureOptions): PictureRenderer {
  const renderer = createCanvasContext(canvas)
  const gl = renderer.getContext() as WebGL2RenderingContext
  const capabilities = detectCapabilities(gl, options.withhold)
  const pass = createPass(renderer)
  const programs = createChainPrograms()
  const timer = createDrawTimer(gl)
  const preparation = createPreparation(pass, schedule)
  let frame: PaintedFrame | null = null
  let painter: FramePainter | null = null
  let request: PictureRequest | null = null
  let drawn: PictureRequest | null = null
  let scheduled = 0
  let resting: ReturnType<typeof setTimeout> | undefined
  let complete = true
  let waiting: (() => void)[] = []

  function schedule(): void {
    complete = false
    scheduled ||= requestAnimationFrame(update)
  }

  function settle(): void {
    complete = true
    for (const resolve of waiting) resolve()
    waiting = []
  }

  function sizeCanvas(width: number, height: number): void {
    if (canvas.width !== width || canvas.height !== height) renderer.setSize(width, height, false)
  }

  function fitCanvas({ view, screenSpace }: PictureRequest): void {
    if (gl.drawingBufferColorSpace !== screenSpace) gl.drawingBufferColorSpace = screenSpace
    sizeCanvas(view.width, view.height)
  }

  function drawFrame(current: FramePainter, wanted: PictureRequest): void {
    const busy = timer.busy()
    const slow = capabilities.softwareGl || timer.slow()
    if ((busy && slow) || !current.load()) return schedule()
    const moving = slow && wanted.quality === 'moving'
    const seen = current.cover(wanted, 0)
    if (!preparation.isReady(current.materials(wanted, seen))) return
    const canMake = seen.unfinished > 0 && preparation.isReady(current.tileMaterials)
    const budgetPx = moving ? 0 : slow ? tilePxPerSlowDraw : tilePxPerDraw
    const cover = canMake ? current.cover(wanted, budgetPx) : seen
    // On slow graphics drawing costs more than making tiles: what is drawn once is drawn again only when all are there.
    const isDraft = !moving && cover.unfinished > 0
    if (!(slow && isDraft && wanted === drawn)) paint(current, wanted, cover, moving)
    timer.mark(!moving && !isDraft)
    if (moving) resting = setTimeout(() => draw({ ...wanted, quality: 'still' }), restMs)
    else if (isDraft) schedule()
    else settle()
  }

  function paint(current: FramePainter, wanted: PictureRequest, cover: Cover, moving: boolean): void {
    fitCanvas(wanted)
    current.paint(wanted, cover, moving ? 'half' : 'whole')
    drawn = wanted
    options.onDrawn?.()
  }

  function update(): void {
    scheduled = 0
    if (!request || gl.isContextLost()) return
    if (painter) return drawFrame(painter, request)
    fitCanvas(request)
    renderer.setRenderTarget(null)
    renderer.clear()
    settle()
  }

  function draw(wanted: PictureRequest): void {
    clearTimeout(resting)
    request = wanted
    schedule()
  }

  function renewPainter(): void {
    drawn = null
    painter?.dispose()
    painter = frame && createFramePainter({ renderer, pass, programs, capabilities }, frame)
    schedule()
  }

  function setSurround(): void {
    renderer.setClearColor(new Color().setScalar(options.surround), 1)
    renderer.clear()
  }

  function restore(): void {
    setSurround()
    preparation.forget()
    timer.reset()
    renewPainter()
  }
  canvas.addEventListener('webglcontextrestored', restore)
  setSurround()

  return {
    capabilities,
    fit(width, height) {
      if (frame || gl.isContextLost()) return
      sizeCanvas(width, height)
      renderer.setRenderTarget(null)
      renderer.clear()
    },
    setFrame(next) {
      frame = next
      renewPainter()
    },
    draw,
    async thumbnails(descriptions, width) {
      const asked = painter
      if (!asked || gl.isContextLost()) return null
      const pictures = await asked.thumbnails(descriptions, width).catch((reason: unknown) => {
        if (!gl.isContextLost() && asked === painter) throw reason
        return null
      })
      return asked === painter ? pictures : null
    },
    settled: () => (complete ? Promise.resolve() : new Promise((resolve) => waiting.push(resolve))),
    dispose() {
      canvas.removeEventListener('webglcontextrestored', restore)
      cancelAnimationFrame(scheduled)
      clearTimeout(resting)
      painter?.dispose()
      programs.dispose()
      renderer.dispose()
    },
  }
}
