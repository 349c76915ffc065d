// What the screen knows of the places of a step: which one is open.
import { createStore } from 'zustand/vanilla'

interface PlacesTool {
  readonly stepId: string | null
  /** Index of the part whose controls and handles are shown, or null. */
  readonly open: number | null
}

export const placesTool = createStore<PlacesTool>(() => ({ stepId: null, open: null }))

export function openPart(stepId: string, open: number | null): void {
  placesTool.setState({ stepId, open })
}
