// What only the screen knows: what is pointed at, the open dialog, what is folded and whether single keys act. No edits, no
// pixels.
import { createStore } from 'zustand/vanilla'

import type { NeutralGains } from '../edits/marks.ts'
import type { Chain } from '../edits/stack.ts'
import type { Place } from '../workbench/session.ts'
import { readSetting, writeSetting } from '../workbench/settings.ts'

export type OpenDialog = 'help' | 'export' | 'table' | 'in camera' | null

/** A neutral that is pointed at beside the picture, and what it is called over it, e.g. "mark A". */
export interface PointedNeutral {
  readonly name: string
  readonly gains: NeutralGains
  /** Where in the frame it comes from; null from nowhere. */
  readonly place: Place | null
}

interface Screen {
  readonly pointer: Place | null
  /** Shown in the picture while it is pointed at. */
  readonly pointed: PointedNeutral | null
  /** The chain that a colour map was last pointed at with, and what it is called over the picture while that is shown. */
  readonly pointedMap: { readonly name: string; readonly chain: Chain } | null
  /** Where the pointer last stood in the picture; the middle before it did. */
  readonly lastPointed: Place
  /** Corners of the outline being drawn for the probe, or null; and the cursor that sets them by keys. */
  readonly outline: readonly Place[] | null
  readonly corner: Place | null
  /** Room for the picture in CSS pixels. */
  readonly pictureSize: { readonly width: number; readonly height: number }
  readonly dialog: OpenDialog
  /** Index of the hue band whose numbers stand in the panel. */
  readonly chosenBand: number
  /** Single keys can be switched off, because speech input and slips of the hand press them too (WCAG 2.1.4). */
  readonly singleKeys: boolean
  readonly leftFolded: boolean
}

const singleKeysEntry = 'singleKeys'
const leftFoldedEntry = 'leftFolded'

export const screen = createStore<Screen>(() => ({
  pointer: null,
  pointed: null,
  pointedMap: null,
  lastPointed: { x: 0.5, y: 0.5 },
  outline: null,
  corner: null,
  pictureSize: { width: 0, height: 0 },
  dialog: null,
  chosenBand: 0,
  singleKeys: readSetting(singleKeysEntry) !== 'off',
  leftFolded: readSetting(leftFoldedEntry) === 'yes',
}))

export function setPointer(pointer: Place | null): void {
  screen.setState(({ lastPointed }) => ({ pointer, lastPointed: pointer ?? lastPointed }))
}

export function openDialog(dialog: OpenDialog): void {
  screen.setState({ dialog })
}

export function chooseBand(chosenBand: number): void {
  screen.setState({ chosenBand })
}

export function setSingleKeys(singleKeys: boolean): void {
  writeSetting(singleKeysEntry, singleKeys ? 'on' : 'off')
  screen.setState({ singleKeys })
}

export function setLeftFolded(leftFolded: boolean): void {
  writeSetting(leftFoldedEntry, leftFolded ? 'yes' : 'no')
  screen.setState({ leftFolded })
}

export function pointAtNeutral(pointed: PointedNeutral | null): void {
  screen.setState({ pointed })
}

/** Nothing is pointed at any more, unless something else is meanwhile. */
export function leaveNeutral(left: PointedNeutral): void {
  screen.setState(({ pointed }) => (pointed === left ? { pointed: null } : {}))
}

export function pointAtMap(name: string, chain: Chain): void {
  screen.setState({ pointedMap: { name, chain } })
}
