// The way of one colour through the chain: the pixel under the pointer, or one of the reference places, after every step as a
// patch and in numbers.
import { useEffect, useMemo, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { Group } from 'react-aria-components/Group'

import type { TracedColour } from '../../pipeline/trace-chain.ts'
import type { Place } from '../../workbench/session.ts'
import { titleOf } from '../chain/selected-step.ts'
import { formatNumber } from '../../text/format-number.ts'
import { cssColour, showPlaces, usePlaceColours } from './place-colours.ts'
import { usePointedPlace, useSeen } from './use-seen.ts'
import { useSession, useWorkbench } from '../workbench-context.tsx'

/** Least time between two readings in ms (our choice). */
const everyMs = 150

const percent = (value: number) => formatNumber(value * 100, 1)

function TraceRow({ title, colour }: { title: string; colour: TracedColour }) {
  return (
    <tr>
      <th scope="row">
        <span className="trace-step">
          <span className="patch" style={{ background: cssColour(colour) }} />
          {title}
        </span>
      </th>
      {colour.rgb.map((value, channel) => (
        // oxlint-disable-next-line react/no-array-index-key -- red, green, blue
        <td key={channel}>{percent(value)}</td>
      ))}
    </tr>
  )
}

/** Which place is traced: null is what is pointed at. */
function PlaceChoice({ chosen, onChoose }: { chosen: number | null; onChoose: (index: number | null) => void }) {
  const places = usePlaceColours((colours) => colours.places)
  useEffect(() => () => showPlaces(false), [])
  const choose = (index: number | null) => {
    onChoose(index)
    showPlaces(index !== null)
  }
  return (
    <Group className="place-choice" aria-label="Place">
      <Button className="button" aria-pressed={chosen === null} onPress={() => choose(null)}>
        Pointed
      </Button>
      {places.map(({ name }, i) => (
        <Button
          key={`${i} ${name}`}
          className="button"
          aria-label={`Place ${name}`}
          aria-pressed={chosen === i}
          onPress={() => choose(i)}
        >
          {name}
        </Button>
      ))}
    </Group>
  )
}

/** The way of the colour at a place, the pointed one where there is none. */
function TraceTable({ place }: { place: Place | null }) {
  const workbench = useWorkbench()
  const { frameId, chain } = useSeen(everyMs)
  const pointed = usePointedPlace(everyMs)
  const shown = useSession((session) => session.shown)
  const { x, y } = place ?? pointed
  const way = useMemo(
    () => (frameId === null ? [] : (workbench.trace(chain, [{ x, y }])?.[0] ?? [])),
    [workbench, frameId, chain, x, y],
  )
  const titleAt = (stepId: string | null) => {
    const step = chain.find(({ id }) => id === stepId)
    return step ? titleOf(step) : 'Sensor'
  }

  return (
    <>
      <table className="trace-table">
        <caption>
          {shown && `Column ${Math.floor(x * shown.width)}, row ${Math.floor(y * shown.height)}`}
          <span className="unit">%</span>
        </caption>
        <thead>
          <tr>
            <th scope="col">after</th>
            <th scope="col">red</th>
            <th scope="col">green</th>
            <th scope="col">blue</th>
          </tr>
        </thead>
        <tbody>
          {way.map((colour) => (
            <TraceRow key={colour.stepId ?? 'sensor'} title={titleAt(colour.stepId)} colour={colour} />
          ))}
        </tbody>
      </table>
      <p className="control-note">
        Means of a small square about the place: linear light in % of white, after the output in % of its encoded range.
      </p>
    </>
  )
}

export function Trace() {
  const places = usePlaceColours((colours) => colours.places)
  const [chosen, setChosen] = useState<number | null>(null)
  return (
    <>
      <PlaceChoice chosen={chosen} onChoose={setChosen} />
      <TraceTable place={chosen === null ? null : (places[chosen] ?? null)} />
    </>
  )
}
