// What the picture renderer is asked to draw. Lengths are device pixels of the canvas unless they say otherwise.
import type { PipelineDescription } from '../pipeline/description.ts'

/** Where the frame lies on the canvas. */
export interface PictureView {
  /** Size of the canvas. */
  readonly width: number
  readonly height: number
  /** Upper left corner of the frame; whole numbers show sensor pixels without a shift at 1:1. */
  readonly left: number
  readonly top: number
  /** Device pixels per sensor pixel. */
  readonly zoom: number
}

/** What a drawing marks where it clips: nothing, the sensor's channels, or the finished picture's. */
export type ClippingShown = 'none' | 'sensor' | 'output'

export interface PictureRequest {
  readonly description: PipelineDescription
  readonly view: PictureView
  /**
   * A second rendering of the frame, right of `divide` (0…1 of the canvas width). Above fit it shares the tiles of the
   * first, which were interpolated at the first one's gains.
   */
  readonly second?: { readonly description: PipelineDescription; readonly divide: number }
  readonly clipping?: ClippingShown
  /** 'moving' while a gesture or the probe runs: slow machines draw at half size and follow up in full when it rests. */
  readonly quality: 'moving' | 'still'
  /** Space the descriptions encode for. */
  readonly screenSpace: 'srgb' | 'display-p3'
}
