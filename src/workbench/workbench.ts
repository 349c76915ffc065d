// Everything a person can do at the workbench, as commands; the screen calls these and reads two stores.
import type { StoreApi } from 'zustand/vanilla'

import type { ColourMap } from '../edits/colour-map.ts'
import type { LightTarget } from '../edits/light-picks.ts'
import type { Mark, Marks, NeutralGains } from '../edits/marks.ts'
import type { Chain } from '../edits/stack.ts'
import type { TableFile, TableFileSettings } from '../export/table-file.ts'
import type { ExportSettings } from '../export/export-picture.ts'
import type { Outline } from '../frame/sample-region.ts'
import type { ControlValue } from '../operations/define.ts'
import type { StepMask } from '../operations/masks/mask.ts'
import type { NeutralOutlook } from './neutral-outlook.ts'
import type { FrameNeutral } from './roll-neutrals.ts'
import type { TracedColour } from '../pipeline/trace-chain.ts'
import type { ClippingShown, Place, SampleWay, Session, Tool, View } from './session.ts'

/** The shown frame's chain and what undo and redo would name; null while no frame is shown. */
export interface ShownEdit {
  readonly chain: Chain
  readonly marks: Marks
  readonly undoName: string | null
  readonly redoName: string | null
}

/** A step that may or may not leave as a colour table. */
export interface BakeStep {
  readonly stepId: string
  readonly title: string
  /** False where it acts differently from place to place. */
  readonly mayLeave: boolean
  /** Whether a CLF file holds it without sampling. */
  readonly isExact: boolean
  /** Whether it places colours, and not tone. */
  readonly isMapping: boolean
}

export interface Workbench {
  readonly session: StoreApi<Session>
  readonly edit: StoreApi<{ readonly shown: ShownEdit | null }>

  // Roll
  /**
   * Opens files as frames; an edit file goes to the shown frame instead. With the name of a folder, what cannot be a frame is
   * passed by and counted in one note; without, every file is tried.
   */
  openFiles(files: readonly File[], folderName?: string): Promise<void>
  openDemoRoll(): Promise<void>
  showFrame(id: string): Promise<void>
  showNeighbour(offset: 1 | -1): Promise<void>
  /** Cut-on in nm, null full spectrum. A chain as it opened becomes the one for it; any other is left alone. */
  stateFilter(id: string, filterNm: number | null): void

  // Picture
  /** Puts the picture's canvas below all else in `host` and draws, until the returned function is called. */
  attachPicture(host: HTMLElement): () => void
  setView(view: Partial<View>): void
  zoomAbout(place: Place, factor: number): void
  /** Marks in the picture what clips in the sensor or in the finished picture, or nothing. */
  showClipping(clipping: ClippingShown): void
  /** Screen pixels (CSS) to a place in the frame, and back; null outside or while no frame is shown. */
  placeAt(cssX: number, cssY: number): Place | null
  cssOf(place: Place): { readonly x: number; readonly y: number; readonly radius: number } | null

  // Tools of the pointer, and the probe
  /** Puts the tool before away and takes this one up plain: the probe with its ring, for the frame's neutral. */
  setTool(tool: Tool): void
  /** What the probe picks for until it is put away: a pick of a second light, or null for the frame's neutral. */
  setProbeTarget(target: LightTarget | null): void
  /** Held between one cell of the sensor and a twentieth of the frame on the bench. */
  setSampleRadius(radiusPx: number): void
  /** Ring or outline; what was sampled the other way is let go. */
  setSampleWay(way: SampleWay): void
  roam(place: Place | null): void
  /** Samples what a drawn outline holds; one that holds no part of the picture tells so and samples nothing. */
  probeOutline(outline: Outline): void
  commitProbe(): void
  /** Ends the probe, or the gesture under way, leaving everything as it was. */
  escape(): void

  // Marks
  /** Keeps the probe's neutral as a mark without committing it; without a usable probe nothing happens. */
  markProbe(): void
  addMark(gains: NeutralGains, place: Mark['place'], name?: string): void
  removeMark(markId: string): void
  renameMark(markId: string, name: string): void
  pinMark(markId: string, pinned: boolean): void
  moveMark(markId: string, toIndex: number): void
  /** Gives a mark other gains, as when its dot is dragged; its place is forgotten. */
  setMarkGains(markId: string, gains: NeutralGains): void
  /** Makes these gains the frame's neutral, as one named change. */
  adoptNeutral(gains: NeutralGains, name: string): void
  /** Writes the board as one PNG: every mark finished, with its name and gains. Without marks nothing happens. */
  exportBoard(): Promise<void>

  // Colour maps
  /** Puts a map's steps in the place of the shown frame's mapping, as one named change. */
  applyMap(map: ColourMap): void
  /** Keeps the shown frame's mapping as a map of one's own; its id, or null where the frame has none. */
  saveMap(name: string): string | null
  renameMap(mapId: string, name: string): void
  removeMap(mapId: string): void
  /** Writes maps of one's own to one file that can be read. */
  exportMaps(mapIds: readonly string[]): Promise<void>
  /** Takes the maps of a file in; a file that cannot be used changes nothing and says why. */
  importMaps(file: File): Promise<void>

  // Preview
  /** Shows another chain in the picture until null; nothing is changed. */
  preview(chain: Chain | null): void
  /** Divides the picture at 0…1 of its width while it shows another chain than the frame's own; null shows that one alone. */
  setDivide(divide: number | null): void
  /**
   * Small finished pictures of the shown frame, one for each chain, `widthPx` device pixels wide, encoded in sRGB; null when no
   * frame is shown, or another one meanwhile.
   */
  thumbnails(chains: readonly Chain[], widthPx: number): Promise<ImageData[] | null>

  /** What would become of neutrals under the shown frame's chain as it stands now; null while no frame is shown. */
  neutralOutlook(): NeutralOutlook | null
  /** The neutrals that the frames of the roll have now. */
  rollNeutrals(): readonly FrameNeutral[]

  /** Lays over the picture where this step acts, while it is the selected one; null shows the picture alone. */
  showReach(stepId: string | null): void

  /** Linear `workingRgb` of a sample at a place as it arrives at a step; null where it is clipped, too dark, or the step is off. */
  colourBefore(stepId: string, place: Place): readonly [number, number, number] | null

  // Readings
  /** Colours of places after every step of a chain that acts, the sensor first; null while no frame is shown. */
  trace(chain: Chain, places: readonly Place[]): readonly (readonly TracedColour[])[] | null
  /** Evenly spread pixels as they enter a step of the chain, whether it is on or off: interleaved linear RGB. */
  pixelsBefore(chain: Chain, stepId: string): Promise<Float32Array | null>

  // Chain
  selectStep(stepId: string | null): void
  setValues(stepId: string, values: Record<string, ControlValue>, name: string): void
  beginGesture(name: string): void
  /** Between begin and end; many calls become one history entry. */
  changeValues(stepId: string, values: Record<string, ControlValue>): void
  endGesture(): void
  cancelGesture(): void
  /** Where a step acts, null for everywhere, as one named change; `changeMask` stands between begin and end of a gesture. */
  setMask(stepId: string, mask: StepMask | null, name: string): void
  changeMask(stepId: string, mask: StepMask | null): void
  /** Moves the step's places on to a new step of the same kind right behind it, as one named change, and selects that. */
  giveMaskOwnStep(stepId: string): void
  /** log2 R/B of a place against the frame's grey in stops; null until a step asks for foliage or sky and it is worked out. */
  materialAt(place: Place): number | null
  setStepEnabled(stepId: string, enabled: boolean): void
  addStep(operationId: string): void
  removeStep(stepId: string): void
  moveStep(stepId: string, toIndex: number): void
  resetStep(stepId: string): void
  undo(): void
  redo(): void

  // The whole edit of the shown frame
  /** Writes chain, marks, filter and colour tables to a file of the person's choice. */
  saveEdit(): Promise<void>
  /** Makes the chain in an edit file the frame's, as one named change, and adds its marks; a file that cannot be used says why. */
  loadEdit(file: File): Promise<void>
  /** Gives the frame the chain it opens with, as one named change. */
  startAfresh(): void
  /** For how many files an edit is kept for the next time. */
  countKept(): Promise<number>
  /** Forgets what is kept for the next time; open frames stay as they are and are kept again once they change. */
  forgetKept(): Promise<void>

  // Colour tables
  /**
   * Reads a `.cube` or CLF file, keeps it for the next time and puts it into the step; without one into the selected colour
   * table step, or into a new one. A file that cannot be used says why.
   */
  loadTable(file: File, stepId?: string): Promise<void>
  /** Puts a known table into a colour table step, as one named change. */
  chooseTable(stepId: string, tableId: string): void
  /** Makes the tables kept in this browser known. */
  recallTables(): Promise<void>
  /** Forgets a table; steps that name it pass colour unchanged until it is loaded again. */
  forgetTable(tableId: string): Promise<void>

  /** The steps of the shown frame between neutral and output that are on, and whether they may leave as a colour table. */
  bakeSteps(): readonly BakeStep[]
  /** Makes a file of steps and measures it. @throws Error with a sentence, or the signal's reason */
  bakeTable(settings: TableFileSettings, signal: AbortSignal): Promise<TableFile>
  /** Writes it to a file of the person's choice; must be called while a press is handled. */
  saveTable(settings: TableFileSettings, file: TableFile): Promise<void>

  // Export
  exportShown(settings: ExportSettings): Promise<void>
  cancelTask(taskId: string): void
  dismissNotice(noticeId: string): void
}
