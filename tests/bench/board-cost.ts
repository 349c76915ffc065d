// Runs inside a page: what a board of marks costs beside one drawing of the picture, both from the same overview, until their
// pixels have come back.
import { defaultChain } from '../../src/edits/default-chain.ts'
import { withProbe } from '../../src/edits/stack.ts'
import { createCanvasContext } from '../../src/gpu/canvas-context.ts'
import { detectCapabilities } from '../../src/gpu/capabilities.ts'
import { createChainPrograms } from '../../src/gpu/chain-program.ts'
import { createFramePainter } from '../../src/gpu/frame-painter.ts'
import { createPass } from '../../src/gpu/pass.ts'
import { describe } from '../../src/pipeline/describe.ts'
import { bestOf, canvas, facts, frame, paintedOverview } from './hover-cost.ts'

export interface BoardCost {
  readonly renderer: string
  /** Milliseconds, the best of many drawings in turn. */
  readonly board: number
  readonly picture: number
}

const marks = 24
const thumbnailWidth = 184

export async function measureBoard(): Promise<BoardCost> {
  const renderer = createCanvasContext(new OffscreenCanvas(1, 1))
  renderer.setSize(canvas.width, canvas.height, false)
  const gl = renderer.getContext() as WebGL2RenderingContext
  const capabilities = detectCapabilities(gl)
  const context = { renderer, pass: createPass(renderer), programs: createChainPrograms(), capabilities }
  const { frameWidth, frameHeight } = frame
  const painter = createFramePainter(context, {
    sensor: {
      kind: 'linear',
      width: frameWidth,
      height: frameHeight,
      codes: new Uint16Array(0),
      black: [0, 0, 0],
      white: 65_535,
    },
    overview: paintedOverview(2450, 1633),
  })
  while (!painter.load());
  const chain = defaultChain(facts)
  const neutrals = Array.from({ length: marks }, (_, i) => ({ redStops: -1 + i / 12, blueStops: 1 - i / 16 }))
  const descriptions = neutrals.map((gains) => describe(withProbe(chain, gains), facts))
  const zoom = 1550 / frameWidth
  const request = {
    description: descriptions[0],
    view: { ...canvas, left: 25, top: -16, zoom },
    quality: 'still',
    screenSpace: 'srgb',
  } as const
  const cover = painter.cover(request, 0)
  const pixels = new Uint8Array(canvas.width * canvas.height * 4)
  const best = await bestOf({
    board: () => painter.thumbnails(descriptions, thumbnailWidth),
    picture() {
      painter.paint(request, cover, 'whole')
      gl.readPixels(0, 0, canvas.width, canvas.height, gl.RGBA, gl.UNSIGNED_BYTE, pixels)
    },
  })
  return { renderer: capabilities.renderer, ...best }
}
