// Where a mark or a suggestion that is pointed at was taken from.
import { useStore } from 'zustand'

import { screen } from '../screen-store.ts'
import { useSession, useWorkbench } from '../workbench-context.tsx'

/** Radius in CSS pixels: findable, and little of the picture covered (our choice). */
const radius = 7

export function PointedPlace() {
  const workbench = useWorkbench()
  const place = useStore(screen, (state) => state.pointed?.place)
  useSession((session) => session.view)
  useStore(screen, (state) => state.pictureSize)
  const css = place && workbench.cssOf(place)
  if (!css) return null
  return (
    <svg className="ring" data-reliability="good" data-pointed-place aria-hidden="true">
      {['ring-under', 'ring-line'].map((layer) => (
        <circle key={layer} className={layer} cx={css.x} cy={css.y} r={radius} />
      ))}
    </svg>
  )
}
