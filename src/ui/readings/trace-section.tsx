// The way of one colour through the chain: the pixel under the pointer, or one of the reference places, after every step as a
// patch and in numbers.
import { useEffect, useMemo, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { Group } from 'react-aria-components/Group'
import { useStore } from 'zustand'

import type { TracedColour } from '../../pipeline/trace-chain.ts'
import type { Place } from '../../workbench/session.ts'
import { titleOf, useChain } from '../chain/selected-step.ts'
import { formatNumber } from '../format-number.ts'
import { cssColour, showPlaces, usePlaceColours } from './place-colours.ts'
import { screen } from '../screen-store.ts'
import { useSeen } from './use-seen.ts'
import { useThrottled } from './use-throttled.ts'
import { useSession, useWorkbench } from '../workbench-context.tsx'

/** Least time between two readings in ms (our choice). */
const everyMs = 60

/** The probe's place, else the last one the pointer stood at. */
function usePointedPlace(): Place {
  const probe = useSession((session) => session.probe?.place)
  const pointed = useStore(screen, (state) => state.lastPointed)
  return probe ?? pointed
}

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
          key={name}
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

export function Trace() {
  const workbench = useWorkbench()
  const chain = useChain()
  const seen = useSeen()
  const pointed = usePointedPlace()
  const places = usePlaceColours((colours) => colours.places)
  const [chosen, setChosen] = useState<number | null>(null)
  const { x, y } = (chosen === null ? null : places[chosen]) ?? pointed
  const wanted = useMemo(() => ({ ...seen, place: { x, y } }), [seen, x, y])
  const { frameId, chain: traced, place } = useThrottled(wanted, everyMs)
  const shown = useSession((session) => session.shown)
  const way = useMemo(
    () => (frameId === null ? [] : (workbench.trace(traced, [place])?.[0] ?? [])),
    [workbench, frameId, traced, place],
  )
  const titleAt = (stepId: string | null) => {
    const step = [...traced, ...chain].find(({ id }) => id === stepId)
    return step ? titleOf(step) : 'Sensor'
  }

  return (
    <>
      <PlaceChoice chosen={chosen} onChoose={setChosen} />
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
      <p className="control-note">Linear light in % of white; after the output in % of its encoded range.</p>
    </>
  )
}
