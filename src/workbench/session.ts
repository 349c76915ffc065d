// What the screen shows, as plain data: the roll, the shown frame, the probe, the view, work in progress and messages.
// Pixels never live here; the chain of a frame lives in the edit store.
import type { LightTarget } from '../edits/light-picks.ts'
import type { NeutralOffers } from '../analysis/candidates/neutral-offers.ts'
import type { ColourMap } from '../edits/colour-map.ts'
import type { Chain } from '../edits/stack.ts'
import type { Developed, ExposureMetadata, FrameFacts, FrameReadings } from '../frame/frame.ts'
import type { ClippingShown } from '../gpu/picture-request.ts'
import type { PatchSample } from '../frame/sample-patch.ts'
import type { Outline } from '../frame/sample-region.ts'
import type { NamedTable } from '../roll/edit.ts'

/** How a roll entry stands. */
export type EntryState =
  | { readonly kind: 'waiting' }
  /** Being made (demo roll), read or decoded; fraction 0…1, or null while it cannot be known. */
  | { readonly kind: 'working'; readonly doing: string; readonly fraction: number | null }
  | { readonly kind: 'ready' }
  | { readonly kind: 'failed'; readonly reason: string }

export interface RollEntry {
  readonly id: string
  readonly fileName: string
  readonly state: EntryState
  /** Object URL of a small picture: the camera's own preview first, the finished picture once there is one. */
  readonly pictureUrl: string | null
  /** Filter the user stated: cut-on in nm, null for full spectrum, undefined when nothing was stated. */
  readonly statedFilterNm: number | null | undefined
  /** Maker and model as the camera wrote them; absent until the file is read. */
  readonly camera?: string
}

/** Facts of the shown frame for display; no pixels. */
export interface ShownFrame {
  readonly id: string
  readonly fileName: string
  readonly width: number
  readonly height: number
  /** 'Bayer mosaic', '6×6 mosaic', 'one channel', 'three channels'. */
  readonly sensorKind: string
  readonly facts: FrameFacts
  readonly metadata: ExposureMetadata
  /** What it was before it was opened; null for raw files. */
  readonly developed: Developed | null
  readonly warnings: readonly string[]
}

/** A place in the picture, x and y in 0…1 from the upper left of the upright frame. */
export interface Place {
  readonly x: number
  readonly y: number
}

/** The neutral picker; null when it is not over the picture. */
export interface Probe {
  /** Middle of the sample. */
  readonly place: Place
  /** What was sampled, where it was drawn by hand; null for the ring about the place. */
  readonly outline: Outline | null
  readonly reading: PatchSample
  /** Neutral the place would give (log2 gains), or null where the sample is unusable. */
  readonly neutral: { readonly redStops: number; readonly blueStops: number } | null
}

/** The sample is a ring that roams, or an outline drawn by hand. */
export type SampleWay = 'ring' | 'outline'

/**
 * What the pointer does in the picture, one thing at a time: 'pan' moves it, 'probe' roams with the neutral picker, and for the
 * selected step 'brush' paints light, 'hue pick' and 'place pick' take a hue or what a place is made of.
 */
export type Tool = 'pan' | 'probe' | 'brush' | 'hue pick' | 'place pick'

/** How the picture is seen. `zoom` is screen pixels (device) per sensor pixel; fit follows the window. */
export interface View {
  readonly fit: boolean
  readonly zoom: number
  readonly centre: Place
}

export type { ClippingShown }

/** Work that takes a while. */
export interface Task {
  readonly id: string
  readonly label: string
  /** 0…1, or null while unknown. */
  readonly fraction: number | null
  readonly secondsLeft: number | null
  readonly cancellable: boolean
}

export interface Notice {
  readonly id: string
  readonly tone: 'problem' | 'note'
  readonly text: string
  /** One thing that can be done about it, in words for a button. */
  readonly answer?: { readonly words: string; readonly act: () => void }
}

/** A colour table that can be chosen; its numbers lie in the supply store. */
export interface KnownTable extends Pick<NamedTable, 'name' | 'facts'> {
  /** SHA-256 of its content. */
  readonly id: string
  readonly kind: '1d' | '3d'
  /** Points of the line, or of a side of the cube. */
  readonly size: number
}

export interface Session {
  /** Of the folder, or the demo roll, that all entries came from; null where there is no such one. */
  readonly rollName: string | null
  readonly entries: readonly RollEntry[]
  readonly shownId: string | null
  readonly shown: ShownFrame | null
  /** By id of the roll entry, each a moment after its frame. */
  readonly readings: Readonly<Record<string, FrameReadings>>
  readonly selectedStepId: string | null
  readonly tool: Tool
  readonly sampleWay: SampleWay
  /** Radius of the ring in sensor pixels. */
  readonly sampleRadiusPx: number
  readonly probe: Probe | null
  /** What the shown frame offers as its neutral, or null while that is being found out. */
  readonly offers: NeutralOffers | null
  /** What the probe picks for: null is the frame's neutral. */
  readonly probeTarget: LightTarget | null
  /** The step whose reach is laid over the picture while it is the selected one. */
  readonly reachOf: string | null
  /** A chain shown in the picture in place of the frame's own while something is pointed at; the probe goes before it. */
  readonly preview: Chain | null
  /** Where the picture is divided while it shows another chain, 0…1 of its width: the frame's own stays left of it. Null is undivided. */
  readonly divide: number | null
  readonly view: View
  /** What the picture marks where it clips: nothing, the sensor's channels, or its own. */
  readonly clippingShown: ClippingShown
  /** Counts the tables that came, went or changed, so that what tells of the picture follows those that come late. */
  readonly supplyChanges: number
  readonly tasks: readonly Task[]
  readonly notices: readonly Notice[]
  /** Colour tables known here, by name. */
  readonly tables: readonly KnownTable[]
  /** Whether edits outlast this page; false once the browser refused to keep one. */
  readonly keepsEdits: boolean
  /** Colour maps of the user's own, in the order of the shelf. */
  readonly maps: readonly ColourMap[]
  /** Screen space the picture is drawn in. */
  readonly screenSpace: 'srgb' | 'display-p3'
  /** One sentence on what the graphics of this machine cannot do, or null. */
  readonly graphicsLimit: string | null
}
