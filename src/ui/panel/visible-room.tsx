// Whether the file brings the matrix that the visible-light step blends in.
import { useSession } from '../workbench-context.tsx'

export function VisibleRoom() {
  const hasMatrix = useSession((session) => session.shown?.facts.cameraToXyz != null)
  return (
    <p className="control-note">
      {hasMatrix
        ? 'Made for visible light: right for full spectrum with little infrared, a matter of taste behind a filter.'
        : 'This file brings no matrix for visible light, so colours pass unchanged.'}
    </p>
  )
}
