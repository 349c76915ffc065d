// What only the screen knows: the place under the pointer, the open dialog and whether single keys act. No edits, no pixels.
import { createStore } from 'zustand/vanilla'

import type { Place } from '../workbench/session.ts'

export type OpenDialog = 'help' | 'export' | null

interface Screen {
  readonly pointer: Place | null
  /** Room for the picture in CSS pixels. */
  readonly pictureSize: { readonly width: number; readonly height: number }
  readonly dialog: OpenDialog
  /** Single keys can be switched off, because speech input and slips of the hand press them too (WCAG 2.1.4). */
  readonly singleKeys: boolean
}

const singleKeysEntry = 'rimeleaf.singleKeys'

export const screen = createStore<Screen>(() => ({
  pointer: null,
  pictureSize: { width: 0, height: 0 },
  dialog: null,
  singleKeys: localStorage.getItem(singleKeysEntry) !== 'off',
}))

export function openDialog(dialog: OpenDialog): void {
  screen.setState({ dialog })
}

export function setSingleKeys(singleKeys: boolean): void {
  localStorage.setItem(singleKeysEntry, singleKeys ? 'on' : 'off')
  screen.setState({ singleKeys })
}
