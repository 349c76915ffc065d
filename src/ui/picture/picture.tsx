// The picture on its neutral surround. The workbench puts its canvas below all else here; here are pointer, wheel, touch and keys.
import { useEffect, useRef } from 'react'

import { HuePick } from './hue-pick.tsx'
import { OutlineShape } from './outline-shape.tsx'
import { PictureDivide } from './picture-divide.tsx'
import { PictureState } from './picture-state.tsx'
import { usePictureKeys } from './picture-keys.ts'
import { usePicturePointer } from './picture-pointer.ts'
import { usePictureWheel } from './picture-wheel.ts'
import { StepLayers } from '../lights/step-layers.tsx'
import { ClippingLegend } from '../readings/clipping-legend.tsx'
import { PlaceMarkers } from '../readings/place-markers.tsx'
import { PointedPlace } from './pointed-place.tsx'
import { PreviewCaption } from './preview-caption.tsx'
import { ProbeRing } from './probe-ring.tsx'
import { screen } from '../screen-store.ts'
import { SpokenReading } from './spoken-reading.tsx'
import { useSession, useWorkbench } from '../workbench-context.tsx'

export function Picture() {
  const workbench = useWorkbench()
  const tool = useSession((session) => session.tool)
  const shownId = useSession((session) => session.shownId)
  const fileName = useSession((session) => session.shown?.fileName)
  const area = useRef<HTMLDivElement>(null)
  const pointer = usePicturePointer(area)
  const keys = usePictureKeys(area)
  usePictureWheel(area)

  useEffect(() => workbench.attachPicture(area.current!), [workbench])
  useEffect(() => {
    const observer = new ResizeObserver(([entry]) => {
      const { width, height } = entry.contentRect
      screen.setState({ pictureSize: { width, height } })
    })
    observer.observe(area.current!)
    return () => observer.disconnect()
  }, [])

  return (
    <section className="picture" aria-label="Picture">
      <div
        ref={area}
        id="picture-area"
        className="picture-area"
        data-tool={tool}
        role="application"
        aria-label={fileName ? `Picture of ${fileName}` : 'Picture'}
        aria-describedby="picture-keys"
        // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- an application takes keys of its own
        tabIndex={0}
        {...pointer}
        {...keys}
      >
        <PlaceMarkers />
        <ProbeRing />
        <HuePick />
        <OutlineShape key={shownId} />
        <PointedPlace />
        <PictureDivide />
        <PreviewCaption />
        <StepLayers />
      </div>
      <p id="picture-keys" hidden>
        N takes up the neutral probe, arrow keys roam or move the picture, Enter makes the place neutral, with shift
        keeps it as a mark, Escape leaves it. While the probe takes an outline, arrow keys move a cursor, space sets a
        corner, Enter closes it.
      </p>
      <ClippingLegend />
      <PictureState />
      <SpokenReading />
    </section>
  )
}
