// What the screen knows of the places of a step: whether they are unfolded, which one is open, and whether one is being picked.
import { createStore } from 'zustand/vanilla'

interface PlacesTool {
  readonly stepId: string | null
  /** Index of the part whose controls and handles are shown, or null. */
  readonly open: number | null
  /** Whether the open part waits for a place in the picture. */
  readonly picking: boolean
}

export const placesTool = createStore<PlacesTool>(() => ({ stepId: null, open: null, picking: false }))

export function openPart(stepId: string, open: number | null): void {
  placesTool.setState({ stepId, open, picking: false })
}

export function setPicking(picking: boolean): void {
  placesTool.setState({ picking })
}
