// The neutrals that a roll holds, frame by frame and by camera and filter: what a camera that must be set before shooting can be
// set by next time. As ratios of the sensor in stops, which mean the same whatever program reads them.
import type { EditStore } from '../edits/edit-store.ts'
import { neutralGains } from '../edits/stack.ts'
import type { Session } from './session.ts'

export interface FrameNeutral {
  readonly frameId: string
  readonly fileName: string
  /** Maker and model as the camera wrote them; empty where it wrote none. */
  readonly camera: string
  /** Cut-on as stated, null for full spectrum, undefined where nothing was stated. */
  readonly filterNm: number | null | undefined
  /** log2 R/G and B/G of what the frame shows as neutral. */
  readonly log2RedGreen: number
  readonly log2BlueGreen: number
}

export interface NeutralGroup {
  readonly camera: string
  readonly filterNm: number | null | undefined
  readonly frames: readonly FrameNeutral[]
  /** Mean of the ratios in stops, and the root mean square distance of the frames from it; 0 for a single frame. */
  readonly log2RedGreen: number
  readonly log2BlueGreen: number
  readonly spreadStops: number
}

/** The neutrals of all frames that have one and switched it on, in the order of the roll. */
export function rollNeutrals(entries: Session['entries'], edits: EditStore): FrameNeutral[] {
  return entries.flatMap(({ id, fileName, camera = '', statedFilterNm: filterNm }) => {
    const gains = neutralGains(edits.history(id)?.chain ?? [])
    if (!gains) return []
    return [{ frameId: id, fileName, camera, filterNm, log2RedGreen: -gains.redStops, log2BlueGreen: -gains.blueStops }]
  })
}

/** Frames of the same camera behind the same filter together, in the order of their first frames. */
export function groupNeutrals(neutrals: readonly FrameNeutral[]): NeutralGroup[] {
  const groups = new Map<string, FrameNeutral[]>()
  for (const neutral of neutrals) {
    const key = `${neutral.filterNm} ${neutral.camera}`
    groups.set(key, [...(groups.get(key) ?? []), neutral])
  }
  return [...groups.values()].map((frames) => {
    const mean = (of: (frame: FrameNeutral) => number) =>
      frames.reduce((sum, frame) => sum + of(frame), 0) / frames.length
    const log2RedGreen = mean((frame) => frame.log2RedGreen)
    const log2BlueGreen = mean((frame) => frame.log2BlueGreen)
    const squared = mean(
      (frame) => (frame.log2RedGreen - log2RedGreen) ** 2 + (frame.log2BlueGreen - log2BlueGreen) ** 2,
    )
    const [{ camera, filterNm }] = frames
    return { camera, filterNm, frames, log2RedGreen, log2BlueGreen, spreadStops: Math.sqrt(squared) }
  })
}
