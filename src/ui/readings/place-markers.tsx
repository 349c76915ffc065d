// Where the reference places lie in the picture, named, while one asks for them.
import { useStore } from 'zustand'

import { usePlaceColours } from './place-colours.ts'
import { screen } from '../screen-store.ts'
import { useSession, useWorkbench } from '../workbench-context.tsx'

export function PlaceMarkers() {
  const workbench = useWorkbench()
  const shown = usePlaceColours((colours) => colours.shownInPicture)
  const places = usePlaceColours((colours) => colours.places)
  useSession((session) => session.view)
  useStore(screen, (state) => state.pictureSize)
  if (!shown) return null
  return places.map((place, i) => {
    const css = workbench.cssOf(place)
    return (
      css && (
        <span
          key={`${i} ${place.name}`}
          className="place-marker"
          aria-hidden="true"
          style={{ transform: `translate(${Math.round(css.x)}px, ${Math.round(css.y)}px)` }}
        >
          <span>{place.name}</span>
        </span>
      )
    )
  })
}
