// The wheel on the picture: zoom about the pointer, or the size of the sample with shift. Not passive, so that the page stays.
import { useEffect, type RefObject } from 'react'

import { stepSampleRadius } from './sample-radius.ts'
import { useWorkbench } from '../workbench-context.tsx'

/** Zoom by the factor e for this many CSS pixels of wheel travel: a notch of 100 is about a fifth (our choice). */
const travelPerE = 500
/** CSS pixels per line and page, where a wheel counts in them (common practice, no source). */
const unitPx = [1, 16, 400]

export function usePictureWheel(area: RefObject<HTMLDivElement | null>): void {
  const workbench = useWorkbench()
  useEffect(() => {
    const element = area.current!
    const turn = (event: WheelEvent) => {
      event.preventDefault()
      // Browsers turn shift + wheel into sideways travel.
      const travel = (event.deltaY || event.deltaX) * unitPx[event.deltaMode]
      if (event.shiftKey) {
        stepSampleRadius(workbench, travel < 0 ? 1 : -1)
        return
      }
      const box = element.getBoundingClientRect()
      const place = workbench.placeAt(event.clientX - box.left, event.clientY - box.top)
      // A pinch on a touch pad arrives as a small wheel with ctrl.
      const factor = Math.exp((-travel / travelPerE) * (event.ctrlKey ? 5 : 1))
      workbench.zoomAbout(place ?? workbench.session.getState().view.centre, factor)
    }
    element.addEventListener('wheel', turn, { passive: false })
    return () => element.removeEventListener('wheel', turn)
  }, [workbench, area])
}
