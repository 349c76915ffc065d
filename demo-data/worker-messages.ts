// What the demo workers say to each other and to the page. Codes and files travel by transfer, never by copy.
import type { FrameOrder, Strip } from './strip.ts'

/** Page → frame worker: make this frame. `helpers` further workers share its strips; 1 suits a machine with two cores free. */
export interface FrameRequest extends FrameOrder {
  readonly helpers: number
}

/** Frame worker → page. `done` runs 0…1; exactly one of `finished` and `failed` ends a request. */
export type FrameReply =
  | { readonly kind: 'progress'; readonly frameId: string; readonly done: number }
  | {
      readonly kind: 'finished'
      readonly frameId: string
      readonly fileName: string
      readonly bytes: Uint8Array<ArrayBuffer>
      /** Upright size of the painted picture, and per pixel its material id and share of direct sun (empty unless ordered). */
      readonly width: number
      readonly height: number
      readonly material: Uint8Array
      readonly sun: Uint8Array
    }
  | { readonly kind: 'failed'; readonly frameId: string; readonly reason: string }

/** Frame worker → strip worker: make every strip whose index modulo `of` is `part`. */
export interface ShareRequest {
  readonly order: FrameOrder
  readonly part: number
  readonly of: number
}

/** Strip worker → frame worker. */
export type ShareReply =
  | { readonly kind: 'strip'; readonly strip: Strip }
  | { readonly kind: 'finished' }
  | { readonly kind: 'failed'; readonly reason: string }
