// A round area on the picture: its outline and its inner edge, a point at its middle and one at each of two sides to drag.
import type { Step } from '../../edits/stack.ts'
import { PlaceHandle } from '../lights/place-handle.tsx'
import { usePlacesOnScreen } from '../lights/places-on-screen.ts'
import { maskOf, useMaskGesture, withPart } from './mask-gesture.ts'
import type { Values } from '../../operations/values.ts'
import { radial } from '../../operations/masks/area-kinds.ts'

const { halfWidth: travel } = radial.controls
const held = (half: number) => Math.min(Math.max(Math.round(half * 1000) / 1000, travel.min), travel.max)
const rounded = (share: number) => Math.round(share * 10_000) / 10_000

export function RadialHandles({ step, index }: { step: Step; index: number }) {
  const { cssOf, frameWidthPx, frameHeightPx } = usePlacesOnScreen()
  const mask = maskOf(step)
  const { values } = mask.parts[index]
  const [x, y] = values.centre as readonly number[]
  const [halfWidth, halfHeight, softness] = [values.halfWidth, values.halfHeight, values.softness].map(Number)
  // A change is carried as a list of numbers: x, y, half width, half height.
  const gesture = useMaskGesture(step.id, 'Round area', (changed) => {
    const [centreX, centreY, wide, high] = changed as readonly number[]
    const next: Values = { ...values, centre: [centreX, centreY], halfWidth: wide, halfHeight: high }
    return withPart(mask, index, { values: next })
  })
  const middle = cssOf({ x, y })
  if (!middle || frameWidthPx === 0) return null
  const aspect = frameWidthPx / frameHeightPx
  const radii = { rx: halfWidth * frameWidthPx, ry: halfHeight * frameWidthPx }
  const inner = { rx: radii.rx * (1 - softness), ry: radii.ry * (1 - softness) }
  const ends = { onEnd: gesture.end, onCancel: gesture.cancel }
  return (
    <>
      <svg className="ring" aria-hidden="true">
        {['ring-under', 'ring-line'].map((name) => (
          <g key={name} className={name}>
            <ellipse cx={middle.x} cy={middle.y} {...radii} />
            <ellipse cx={middle.x} cy={middle.y} {...inner} strokeDasharray="2 6" />
          </g>
        ))}
      </svg>
      <PlaceHandle
        label="Middle of the round area"
        place={{ x, y }}
        onMove={(place) => gesture.change([rounded(place.x), rounded(place.y), halfWidth, halfHeight])}
        {...ends}
      />
      <PlaceHandle
        label="Side of the round area"
        place={{ x: x + halfWidth, y }}
        onMove={(place) => gesture.change([x, y, held(Math.abs(place.x - x)), halfHeight])}
        {...ends}
      />
      <PlaceHandle
        label="Foot of the round area"
        place={{ x, y: y + halfHeight * aspect }}
        onMove={(place) => gesture.change([x, y, halfWidth, held(Math.abs(place.y - y) / aspect)])}
        {...ends}
      />
    </>
  )
}
