// The neutral plane below the neutral's controls: the ratios of the sensor as a map in stops, painted with what they would make of a
// patch. Its numbers are those of the sliders above; there is one neutral, shown twice.
import { Minus, Plus, Scan, Thermometer } from 'lucide-react'
import { useCallback, useMemo, useState } from 'react'

import type { NeutralGains } from '../../edits/marks.ts'
import { ChoiceList } from '../controls/choice-list.tsx'
import { IconButton } from '../icon-button.tsx'
import type { StepRoomProps } from '../panel/step-room-props.ts'
import { useSession, useShownEdit } from '../workbench-context.tsx'
import { kelvinScale } from './kelvin-scale.ts'
import { NeutralReadout } from './neutral-readout.tsx'
import { PlanePad, zoomNotch } from './plane-pad.tsx'
import { fittedView, type PadSize, type PlaneView, zoomedView } from './plane-view.ts'
import { useOutlook } from './use-outlook.ts'

const noSize: PadSize = { width: 0, height: 0 }
const mean = 'mean'

/** The pad's view: fitted to what is there at opening, then the hand's. */
function usePlaneView(points: readonly NeutralGains[]) {
  const [size, setSize] = useState(noSize)
  const [chosen, setChosen] = useState<PlaneView | null>(null)
  const [opening, setOpening] = useState<PlaneView | null>(null)
  const view = chosen ?? opening ?? fittedView(points, size)
  const measure = useCallback((measured: PadSize) => {
    setSize((before) => (before.width === measured.width && before.height === measured.height ? before : measured))
  }, [])
  if (opening === null && size.width > 0) setOpening(view)
  const change = useCallback(
    (act: (view: PlaneView) => PlaneView) => setChosen((before) => act(before ?? opening ?? fittedView([], noSize))),
    [opening],
  )
  return { size, view, measure, change }
}

function Plane({ step }: StepRoomProps) {
  const facts = useSession((session) => session.shown!.facts)
  const marks = useShownEdit((edit) => edit?.marks) ?? []
  const outlook = useOutlook()
  const [reference, setReference] = useState(mean)
  const scale = useMemo(() => kelvinScale(facts), [facts])
  const gains = { redStops: Number(step.values.redStops), blueStops: Number(step.values.blueStops) }
  const points = [gains, ...marks.map((mark) => mark.gains)]
  const { size, view, measure, change } = usePlaneView(points)

  const marked = marks.find(({ id }) => id === reference)?.gains
  const patch = useMemo(
    () => (marked && outlook ? outlook.patchOf(marked) : facts.meanCameraRgb),
    [marked, outlook, facts],
  )
  const options = [
    { value: mean, label: 'the frame’s mean' },
    ...marks.map(({ id, name }) => ({ value: id, label: name })),
  ]
  const fit = () => change(() => fittedView(points, size))
  const fitScale = () => change(() => fittedView([...points, ...(scale?.usual ?? [])], size))
  const zoom = (factor: number) => change((now) => zoomedView(now, size, size.width / 2, size.height / 2, factor))
  if (!outlook) return null

  return (
    <section className="plane" aria-labelledby="plane-title">
      <header className="plane-head">
        <span id="plane-title" className="plane-title">
          Neutral plane
        </span>
        <IconButton label="Further away" onPress={() => zoom(1 / zoomNotch)}>
          <Minus />
        </IconButton>
        <IconButton label="Closer" onPress={() => zoom(zoomNotch)}>
          <Plus />
        </IconButton>
        <IconButton label="Show all points" onPress={fit}>
          <Scan />
        </IconButton>
        {scale && (
          <IconButton label="Show points and kelvin scale" onPress={fitScale}>
            <Thermometer />
          </IconButton>
        )}
      </header>
      <div className="plane-frame">
        <span className="plane-axis">blue to green, stop</span>
        <PlanePad
          {...{ stepId: step.id, gains, outlook, patch, scale, view, size }}
          onView={change}
          onSize={measure}
          onFit={fit}
        />
        <span className="plane-axis across">red to green, stop</span>
      </div>
      <NeutralReadout scale={scale} gains={gains} />
      <ChoiceList label="Painted with" options={options} value={marked ? reference : mean} onChange={setReference} />
      <p className="control-note">
        Every point shows what this patch becomes in the finished picture with the neutral there.
      </p>
    </section>
  )
}

export function NeutralPlane({ step }: StepRoomProps) {
  const frameId = useSession((session) => session.shown?.id)
  return frameId === undefined ? null : <Plane key={frameId} step={step} />
}
