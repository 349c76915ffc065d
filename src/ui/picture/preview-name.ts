// What the picture shows in the frame's place while it is pointed at, in words.
import { useStore } from 'zustand'

import { screen } from '../screen-store.ts'
import { useSession } from '../workbench-context.tsx'

/** E.g. "Preview: mark A"; null where the picture shows the frame as it is, or what the probe makes of it. */
export function usePreviewName(): string | null {
  const preview = useSession(({ preview, probe }) => (probe?.neutral == null ? preview : null))
  const name = useStore(
    screen,
    ({ pointed, pointedMap }) => pointed?.name ?? (pointedMap?.chain === preview ? pointedMap?.name : null),
  )
  return preview ? ['Preview', name].filter(Boolean).join(': ') : null
}
