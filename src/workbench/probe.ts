// The probe: reads the place under the pointer and proposes its neutral. It never touches the chain; committing is the
// same substitution put into history, so that the committed picture is the roamed one.
import type { EditStore } from '../edits/edit-store.ts'
import { withLightPick } from '../edits/light-picks.ts'
import { withProbe } from '../edits/stack.ts'
import { sensorCell } from '../frame/cell.ts'
import type { Frame, FrameFacts } from '../frame/frame.ts'
import { type PatchSample, samplePatch } from '../frame/sample-patch.ts'
import { type Outline, sampleRegion } from '../frame/sample-region.ts'
import type { Place, Probe } from './session.ts'
import { notify, type SessionStore } from './session-store.ts'
import type { Workbench } from './workbench.ts'

export type ProbeCommands = Pick<
  Workbench,
  'setTool' | 'setProbeTarget' | 'setSampleRadius' | 'setSampleWay' | 'roam' | 'probeOutline' | 'commitProbe' | 'escape'
>

/** Share of the frame that the largest sample covers. */
const largestShare = 0.05

/** `radiusPx` held between one cell of the sensor and the largest sample of the frame. */
function heldRadiusPx({ sensor }: Frame, radiusPx: number): number {
  const largest = Math.sqrt((largestShare * sensor.width * sensor.height) / Math.PI)
  return Math.min(Math.max(radiusPx, sensorCell(sensor).size / 2), largest)
}

function probeOf(reading: PatchSample, place: Place, outline: Outline | null): Probe {
  const mean = reading.meanCameraRgb
  const neutral = mean && { redStops: Math.log2(mean[1] / mean[0]), blueStops: Math.log2(mean[1] / mean[2]) }
  return { place, outline, reading, neutral }
}

/** The mean of an outline's corners. */
function middleOf(outline: Outline): Place {
  const mean = (axis: 0 | 1) => outline.reduce((sum, corner) => sum + corner[axis] / outline.length, 0)
  return { x: mean(0), y: mean(1) }
}

/** `shown` gives the frame on the bench, or null. */
export function createProbeCommands(
  session: SessionStore,
  edits: EditStore,
  shown: () => { readonly id: string; readonly frame: Frame; readonly facts: FrameFacts } | null,
): ProbeCommands {
  function roam(place: Place | null): void {
    const picture = shown()
    if (!place || !picture) return session.setState({ probe: null })
    // The radius may come from another frame.
    const sampleRadiusPx = heldRadiusPx(picture.frame, session.getState().sampleRadiusPx)
    const reading = samplePatch(picture.frame.sensor, picture.facts.noise, [place.x, place.y], sampleRadiusPx)
    session.setState({ sampleRadiusPx, probe: probeOf(reading, place, null) })
  }

  return {
    setTool: (tool) => session.setState({ tool, probe: null, probeTarget: null, sampleWay: 'ring' }),
    setProbeTarget: (probeTarget) => session.setState({ probeTarget }),
    setSampleRadius(radiusPx) {
      const picture = shown()
      if (!picture) return
      session.setState({ sampleRadiusPx: heldRadiusPx(picture.frame, radiusPx) })
      const { probe } = session.getState()
      if (probe && !probe.outline) roam(probe.place)
    },
    setSampleWay: (sampleWay) => session.setState({ sampleWay, probe: null }),
    roam,
    probeOutline(outline) {
      const picture = shown()
      if (!picture) return
      try {
        const reading = sampleRegion(picture.frame.sensor, picture.facts.noise, outline)
        session.setState({ probe: probeOf(reading, middleOf(outline), outline) })
      } catch (error) {
        if (!(error instanceof RangeError)) throw error
        notify(session, 'note', error.message)
      }
    },
    commitProbe() {
      const picture = shown()
      const { probe, probeTarget } = session.getState()
      if (!picture || !probe?.neutral) return
      const { neutral, place, reading } = probe
      if (probeTarget && reading.meanCameraRgb) {
        const mean = reading.meanCameraRgb
        const name = probeTarget.light === 'sun' ? 'Neutral in the sun' : 'Neutral in the shade'
        edits.apply(picture.id, name, (chain) => withLightPick(chain, probeTarget, mean, place))
      } else edits.apply(picture.id, 'Neutral', (chain) => withProbe(chain, neutral))
      session.setState({ probe: null })
    },
    escape() {
      const picture = shown()
      if (picture) edits.cancelGesture(picture.id)
      session.setState({ probe: null })
    },
  }
}
