// Picking hues in the picture for the hue bands: a press takes the nearest band to the hue under the pointer, the drag that follows
// turns it sideways and strengthens it upwards, with shift lightens it. The same numbers stand in the panel for keys and typing.
import { useEffect, useRef, useState, type PointerEvent } from 'react'

import { oklabToOklch, workingToOklab } from '../../colour/oklab.ts'
import { type HueBand, hueBands, readBands, writeBands } from '../../operations/hue-bands.ts'
import { useGesture } from '../controls/gesture.ts'
import { formatNumber } from '../../text/format-number.ts'
import { useSelectedStep } from '../chain/selected-step.ts'
import { chooseBand } from '../screen-store.ts'
import { useSession, useWorkbench } from '../workbench-context.tsx'

/** What a drag of one CSS pixel does (our choice). */
const degPerPx = 0.25
const stopsPerPx = 0.008
/** Below this C/L a colour has no hue that could be placed. */
const greyBelow = 0.005

interface Pick {
  readonly index: number
  readonly bands: readonly HueBand[]
  readonly x: number
  readonly y: number
}

const apart = (a: number, b: number) => Math.abs(((a - b + 540) % 360) - 180)

/** The bands with the nearest one moved onto the hue; a band that already lies there stays. */
function takeBand(bands: readonly HueBand[], hueDeg: number): { index: number; bands: readonly HueBand[] } {
  const distances = bands.map((band) => apart(band.hueDeg, hueDeg))
  const index = distances.indexOf(Math.min(...distances))
  return { index, bands: bands.with(index, { ...bands[index], hueDeg: Math.round(hueDeg * 10) / 10 }) }
}

function PickLayer({ stepId, written }: { stepId: string; written: readonly number[] }) {
  const workbench = useWorkbench()
  const gesture = useGesture(stepId, 'bands', 'Hue picked in the picture')
  const pick = useRef<Pick | null>(null)
  const [label, setLabel] = useState<string | null>(null)
  const stop = (close: () => void) => {
    pick.current = null
    close()
    setLabel(null)
  }

  useEffect(() => {
    const leave = (event: KeyboardEvent) => {
      if (event.key !== 'Escape') return
      event.stopPropagation()
      if (!pick.current) workbench.setTool('pan')
      stop(gesture.cancel)
    }
    addEventListener('keydown', leave, true)
    return () => removeEventListener('keydown', leave, true)
  })

  const pointOf = (event: PointerEvent<HTMLElement>) => {
    const box = event.currentTarget.getBoundingClientRect()
    return { x: event.clientX - box.left, y: event.clientY - box.top }
  }
  const take = (event: PointerEvent<HTMLElement>) => {
    event.stopPropagation()
    if (event.button !== 0) return
    const point = pointOf(event)
    const place = workbench.placeAt(point.x, point.y)
    const colour = place && workbench.colourBefore(stepId, place)
    if (!place) return
    if (!colour) return setLabel('Clipped or too dark to have a hue')
    const [lightness, chroma, hueDeg] = oklabToOklch(workingToOklab(colour))
    if (!(chroma > greyBelow * lightness)) return setLabel('Too near to grey to have a hue')
    event.currentTarget.setPointerCapture(event.pointerId)
    const taken = takeBand(readBands(written), hueDeg)
    pick.current = { ...taken, ...point }
    chooseBand(taken.index)
    drag(point, event.shiftKey)
  }
  const drag = ({ x, y }: { x: number; y: number }, lightens: boolean) => {
    if (!pick.current) return
    const { bands, index, x: fromX, y: fromY } = pick.current
    const from = bands[index]
    const upwards = Math.round((fromY - y) * stopsPerPx * 100) / 100
    const band: HueBand = {
      ...from,
      turnDeg: Math.round(from.turnDeg + (x - fromX) * degPerPx),
      ...(lightens ? { lightEv: from.lightEv + upwards } : { strengthStops: from.strengthStops + upwards }),
    }
    gesture.change(writeBands(bands.with(index, band)))
    const numbers = [
      `turned ${formatNumber(band.turnDeg, 0, true)}°`,
      `strength ${formatNumber(band.strengthStops, 2, true)} stop`,
      `light ${formatNumber(band.lightEv, 2, true)} EV`,
    ]
    setLabel(`Band ${index + 1}, ${formatNumber(from.hueDeg, 0)}°: ${numbers.join(', ')}`)
  }
  return (
    <div
      className="hue-pick"
      onPointerDown={take}
      onPointerMove={(event) => {
        if (pick.current) event.stopPropagation()
        drag(pointOf(event), event.shiftKey)
      }}
      onPointerUp={(event) => {
        event.stopPropagation()
        stop(gesture.end)
      }}
      onPointerCancel={() => stop(gesture.cancel)}
    >
      {label && <output className="ring-label hue-pick-label">{label}</output>}
    </div>
  )
}

export function HuePick() {
  const isOut = useSession((session) => session.tool === 'hue pick')
  const selected = useSelectedStep()
  if (!isOut || selected?.operation.id !== hueBands.id) return null
  const { id, values } = selected.step
  return <PickLayer stepId={id} written={values.bands as readonly number[]} />
}
