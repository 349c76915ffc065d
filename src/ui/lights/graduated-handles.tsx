// A graduated passage on the picture: two points to drag, and the lines on which it begins and ends.
import type { Gesture } from '../controls/gesture.ts'
import { PlaceHandle } from './place-handle.tsx'
import { usePlacesOnScreen } from './places-on-screen.ts'

/** Longer than any window, in CSS pixels. */
const farPx = 10_000

interface GraduatedHandlesProps {
  /** x, y of the first end and x, y of the second, 0…1 of the frame. */
  readonly ends: readonly number[]
  readonly gesture: Gesture
  readonly labels: readonly [string, string]
}

export function GraduatedHandles({ ends, gesture, labels }: GraduatedHandlesProps) {
  const { cssOf } = usePlacesOnScreen()
  const places = [
    { x: ends[0], y: ends[1] },
    { x: ends[2], y: ends[3] },
  ]
  const [from, to] = places.map(cssOf)
  if (!from || !to) return null
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1
  const across = { x: (-(to.y - from.y) / length) * farPx, y: ((to.x - from.x) / length) * farPx }
  return (
    <>
      <svg className="ring" aria-hidden="true">
        {['ring-under', 'ring-line'].map((name) => (
          <g key={name} className={name}>
            <line x1={from.x} y1={from.y} x2={to.x} y2={to.y} strokeDasharray="2 6" />
            {[from, to].map((end, i) => (
              <line
                key={labels[i]}
                x1={end.x - across.x}
                y1={end.y - across.y}
                x2={end.x + across.x}
                y2={end.y + across.y}
              />
            ))}
          </g>
        ))}
      </svg>
      {places.map((place, i) => (
        <PlaceHandle
          key={labels[i]}
          label={labels[i]}
          place={place}
          onMove={({ x, y }) => gesture.change(ends.toSpliced(2 * i, 2, x, y))}
          onEnd={gesture.end}
          onCancel={gesture.cancel}
        />
      ))}
    </>
  )
}
