// The ring is the sample itself, as large as it is in the picture; beside it as few words as will do, because they hide the
// picture that one wants to see. The status line has the rest.
import { useLayoutEffect, useRef } from 'react'
import { useStore } from 'zustand'

import type { Probe } from '../../workbench/session.ts'
import type { Workbench } from '../../workbench/workbench.ts'
import { formatNumber } from '../../text/format-number.ts'
import { placeLabel } from './label-place.ts'
import { screen } from '../screen-store.ts'
import { useSession, useWorkbench } from '../workbench-context.tsx'

/** Marks outside the ring, so that a tiny sample stays findable: free distance and length in CSS pixels (our choice). */
const markGap = 3
const markLength = 6
const markAnglesDeg = [0, 90, 180, 270]

const titles: Record<Probe['reading']['reliability'], string> = {
  good: 'Good pick',
  fair: 'Fair pick',
  poor: 'Poor pick',
  'too dark': 'Too dark',
  clipped: 'Clipped',
}

/** `radius` and `x`, `y` in CSS pixels of the picture's window. */
function Ring({ x, y, radius, reliability }: { x: number; y: number; radius: number; reliability: string }) {
  const reach = radius + markGap + markLength
  return (
    <svg className="ring" data-reliability={reliability} aria-hidden="true">
      <g transform={`translate(${x} ${y})`}>
        {['ring-under', 'ring-line'].map((layer) => (
          <g key={layer} className={layer}>
            <circle r={radius} />
            {markAnglesDeg.map((angle) => (
              <line key={angle} x1={radius + markGap} x2={reach} transform={`rotate(${angle})`} />
            ))}
          </g>
        ))}
      </g>
    </svg>
  )
}

/** How far the sample reaches from its middle on screen, with the marks round a ring. */
function reachOf(workbench: Workbench, { outline }: Probe, middle: { x: number; y: number; radius: number }): number {
  if (!outline) return middle.radius + markGap + markLength
  const distances = outline.map(([x, y]) => {
    const corner = workbench.cssOf({ x, y })
    return corner ? Math.hypot(corner.x - middle.x, corner.y - middle.y) : 0
  })
  return Math.max(...distances)
}

export function ProbeRing() {
  const workbench = useWorkbench()
  const probe = useSession((session) => session.probe)
  useSession((session) => session.view)
  useSession((session) => session.sampleRadiusPx)
  const size = useStore(screen, (state) => state.pictureSize)
  const label = useRef<HTMLDivElement>(null)
  const css = probe && workbench.cssOf(probe.place)
  const reach = css ? reachOf(workbench, probe, css) : 0

  useLayoutEffect(() => {
    if (!css || !label.current) return
    const { offsetWidth: width, offsetHeight: height } = label.current
    const { x, y } = placeLabel({ x: css.x, y: css.y, radius: reach }, { width, height }, size)
    label.current.style.transform = `translate(${Math.round(x)}px, ${Math.round(y)}px)`
  })

  const inWindow = css && css.x >= 0 && css.y >= 0 && css.x <= size.width && css.y <= size.height
  if (!probe || !inWindow) return null
  const { reading, neutral, outline } = probe
  return (
    <>
      {!outline && <Ring {...css} reliability={reading.reliability} />}
      <div ref={label} className="ring-label" aria-hidden="true">
        <strong>{titles[reading.reliability]}</strong>
        {neutral && (
          <span>
            red {formatNumber(neutral.redStops, 2, true)}, blue {formatNumber(neutral.blueStops, 2, true)}
          </span>
        )}
      </div>
    </>
  )
}
