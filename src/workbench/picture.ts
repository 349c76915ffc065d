// The picture on the canvas follows the stores: whatever changes chain, probe, view or frame asks for one new drawing.
// The probe's picture and the committed one take the same way, so that committing changes nothing on screen.
import { wordsOf } from '../text/thrown.ts'
import type { EditStore } from '../edits/edit-store.ts'
import type { Chain } from '../edits/stack.ts'
import type { Frame, FrameFacts } from '../frame/frame.ts'
import { createPictureRenderer, type PictureRenderer } from '../gpu/picture-renderer.ts'
import { describe } from '../pipeline/describe.ts'
import { chainInPicture } from './chain-in-picture.ts'
import { type DevicePixelsOf, followDevicePixels } from './device-pixels.ts'
import type { Place, View } from './session.ts'
import { notify, type SessionStore } from './session-store.ts'
import type { SupplyStore } from './supply-store.ts'
import { cssOf, type FrameSize, layoutOf, placeAt, type Viewport, zoomedAbout } from './view-geometry.ts'
import type { Workbench } from './workbench.ts'

/** Encoded grey around the picture; the page's surround colour is the same. */
const surround = 0x4a / 0xff

/** The frame being shown with what its chain may know of it. */
export interface ShownPicture {
  readonly id: string
  readonly frame: Frame
  readonly facts: FrameFacts
}

export interface Picture extends Pick<
  Workbench,
  'attachPicture' | 'setView' | 'zoomAbout' | 'placeAt' | 'cssOf' | 'thumbnails'
> {
  /** Shows another frame, or none. */
  show(picture: ShownPicture | null): void
  shown(): ShownPicture | null
}

const whenIdle: (act: () => void) => void = window.requestIdleCallback ?? window.setTimeout

export function createPicture(session: SessionStore, edits: EditStore, supplies: SupplyStore): Picture {
  let shown: ShownPicture | null = null
  const canvas = document.createElement('canvas')
  canvas.className = 'picture-canvas'
  let renderer: PictureRenderer | null = null
  let canvasPixels: DevicePixelsOf | null = null
  let drawnChain: Chain | null = null
  let drawnView: View | null = null
  let hasBegun = false

  const size = (): FrameSize | null => shown && shown.frame.sensor
  function viewport(): Viewport {
    const { width, height } = canvas.getBoundingClientRect()
    return { width, height, devicePixelRatio: window.devicePixelRatio }
  }
  const layout = (frame: FrameSize) => layoutOf(session.getState().view, frame, viewport())

  /** The context is one for the page's whole life. */
  function begin(): void {
    if (hasBegun) return
    hasBegun = true
    try {
      renderer = createPictureRenderer(canvas, { surround })
    } catch (error) {
      return notify(session, 'problem', wordsOf(error))
    }
    session.setState({ graphicsLimit: renderer.capabilities.limit })
    renderer.setFrame(shown?.frame ?? null)
  }
  // It takes a while: before the picture is wanted, while nothing else is going on.
  whenIdle(begin)

  function redraw(): void {
    const history = shown && edits.history(shown.id)
    if (!renderer || !canvasPixels) return
    const { width, height, devicePixelRatio } = viewport()
    if (width === 0 || height === 0) return
    const pixels = canvasPixels.now()
    if (!shown || !history) return renderer.fit(pixels.width, pixels.height)
    const { view, divide, clippingShown, screenSpace, reachOf, selectedStepId } = session.getState()
    const { left, top, scale } = layout(shown.frame.sensor)
    const { chain, isPassing } = chainInPicture(history.chain, session.getState())
    const first = drawnChain === null
    const moving = !first && (isPassing || history.gesture !== null || view !== drawnView)
    drawnChain = history.chain
    drawnView = view
    const options = {
      space: screenSpace,
      supplies: supplies.of(shown.id),
      reachOf: reachOf === selectedStepId ? reachOf : null,
    }
    const isDivided = divide !== null && chain !== history.chain
    renderer.draw({
      description: describe(isDivided ? history.chain : chain, shown.facts, options),
      second: isDivided ? { description: describe(chain, shown.facts, options), divide } : undefined,
      view: {
        ...pixels,
        left: left * devicePixelRatio,
        top: top * devicePixelRatio,
        zoom: scale * devicePixelRatio,
      },
      clipping: clippingShown,
      quality: moving ? 'moving' : 'still',
      screenSpace,
    })
  }

  session.subscribe((now, before) => {
    const keys = [
      'probe',
      'preview',
      'divide',
      'view',
      'clippingShown',
      'screenSpace',
      'reachOf',
      'selectedStepId',
    ] as const
    if (keys.some((key) => now[key] !== before[key])) redraw()
  })
  supplies.onChange(redraw)
  edits.store.subscribe((now, before) => {
    if (shown && now.frames[shown.id] !== before.frames[shown.id]) redraw()
  })

  return {
    shown: () => shown,
    show(picture) {
      if (picture?.frame !== shown?.frame) {
        drawnChain = null
        renderer?.setFrame(picture?.frame ?? null)
      }
      shown = picture
      // After the screen has made room for it: a size that is back to what it was within one frame tells no observer.
      requestAnimationFrame(redraw)
    },
    attachPicture(host) {
      begin()
      host.prepend(canvas)
      canvasPixels = followDevicePixels(canvas, redraw)
      redraw()
      return () => {
        canvasPixels?.stop()
        canvasPixels = null
        canvas.remove()
      }
    },
    async thumbnails(chains, widthPx) {
      const asked = shown
      if (!asked || !renderer) return null
      const options = { space: 'srgb', supplies: supplies.of(asked.id) } as const
      const pictures = await renderer.thumbnails(
        chains.map((chain) => describe(chain, asked.facts, options)),
        widthPx,
      )
      return shown?.id === asked.id ? pictures : null
    },
    setView: (change) => session.setState(({ view }) => ({ view: { ...view, ...change } })),
    zoomAbout(place, factor) {
      const frame = size()
      if (frame) session.setState(({ view }) => ({ view: zoomedAbout(view, frame, viewport(), place, factor) }))
    },
    placeAt(cssX, cssY) {
      const frame = size()
      return frame && placeAt(layout(frame), frame, cssX, cssY)
    },
    cssOf(place: Place) {
      const frame = size()
      if (!frame) return null
      const at = layout(frame)
      return { ...cssOf(at, frame, place), radius: session.getState().sampleRadiusPx * at.scale }
    },
  }
}
