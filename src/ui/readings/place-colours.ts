// The reference places of the shown frame and their colours after every step: worked out once for the chain's patches, the
// trace and the rooms of steps, and told to each as text, so that only what changed is drawn again.
import { useEffect, useMemo } from 'react'
import { createStore } from 'zustand/vanilla'
import { useStore } from 'zustand'

import type { Marks } from '../../edits/marks.ts'
import type { TracedColour } from '../../pipeline/trace-chain.ts'
import type { Place } from '../../workbench/session.ts'
import { useReadings } from './use-readings.ts'
import { useSeen } from './use-seen.ts'
import { useShownEdit, useWorkbench } from '../workbench-context.tsx'

export interface NamedPlace extends Place {
  readonly name: string
}

interface PlaceColours {
  readonly places: readonly NamedPlace[]
  /** For each place the way of its colour through the chain. */
  readonly ways: readonly (readonly TracedColour[])[]
  /** Whether the places are pointed out in the picture. */
  readonly shownInPicture: boolean
}

/** Most places told of, and the least time between two readings in ms (our choice). */
const mostPlaces = 5
const everyMs = 120

const noMarks: Marks = []
const noPlaces: readonly Place[] = []
const store = createStore<PlaceColours>(() => ({ places: [], ways: [], shownInPicture: false }))

export const usePlaceColours = <T>(select: (colours: PlaceColours) => T): T => useStore(store, select)

export function showPlaces(shownInPicture: boolean): void {
  store.setState({ shownInPicture })
}

/** A colour for style sheets. */
export function cssColour({ shown }: TracedColour): string {
  return `rgb(${shown.map((value) => Math.round(value * 255)).join(' ')})`
}

/** The patches after a step as one text, or an empty one where the step does not act; null is the sensor. */
export function patchesAfter(stepId: string | null): (colours: PlaceColours) => string {
  return ({ ways }) =>
    ways
      .map((way) => way.find((colour) => colour.stepId === stepId))
      .filter((colour) => colour !== undefined)
      .map(cssColour)
      .join()
}

/** Keeps the store in step with the picture; stands once on the bench. */
export function PlaceReader() {
  const workbench = useWorkbench()
  const { frameId, chain } = useSeen(everyMs)
  const marks = useShownEdit((edit) => edit?.marks ?? noMarks)
  const found = useReadings()?.places ?? noPlaces
  const places = useMemo((): readonly NamedPlace[] => {
    const marked = marks.flatMap(({ name, place }) => (place ? [{ ...place, name }] : []))
    const numbered = found.map((place, i) => ({ ...place, name: String(i + 1) }))
    return (marked.length > 0 ? [...marked, ...numbered] : numbered).slice(0, mostPlaces)
  }, [marks, found])

  useEffect(() => {
    const ways = frameId === null ? null : workbench.trace(chain, places)
    store.setState(ways ? { places, ways } : { places: [], ways: [] })
  }, [workbench, frameId, chain, places])
  return null
}
