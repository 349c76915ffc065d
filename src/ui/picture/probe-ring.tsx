// The ring around the sample and, beside it, how reliable the pick is in words.
import { useLayoutEffect, useRef } from 'react'
import { useStore } from 'zustand'

import type { Probe } from '../../workbench/session.ts'
import { formatNumber } from '../format-number.ts'
import { placeLabel } from './label-place.ts'
import { screen } from '../screen-store.ts'
import { useSession, useWorkbench } from '../workbench-context.tsx'

/** Smallest ring in CSS pixels: a tiny sample stays findable. */
const smallestRing = 7

const titles: Record<Probe['reading']['reliability'], string> = {
  good: 'Good pick',
  fair: 'Fair pick',
  poor: 'Poor pick',
  'too dark': 'Too dark',
  clipped: 'Clipped',
}

/** The reading's sentence without the title that stands above it. */
function detailOf(sentence: string): string {
  const detail = sentence.slice(sentence.indexOf(':') + 1).trim()
  return detail.charAt(0).toUpperCase() + detail.slice(1)
}

export function ProbeRing() {
  const workbench = useWorkbench()
  const probe = useSession((session) => session.probe)
  useSession((session) => session.view)
  useSession((session) => session.sampleRadiusPx)
  const size = useStore(screen, (state) => state.pictureSize)
  const label = useRef<HTMLDivElement>(null)
  const css = probe && workbench.cssOf(probe.place)
  const radius = css ? Math.max(css.radius, smallestRing) : 0

  useLayoutEffect(() => {
    if (!css || !label.current) return
    const { offsetWidth: width, offsetHeight: height } = label.current
    const { x, y } = placeLabel({ x: css.x, y: css.y, radius }, { width, height }, size)
    label.current.style.transform = `translate(${Math.round(x)}px, ${Math.round(y)}px)`
  })

  const inWindow = css && css.x >= 0 && css.y >= 0 && css.x <= size.width && css.y <= size.height
  if (!probe || !inWindow) return null
  const { reading, neutral } = probe
  return (
    <>
      <div
        className="ring"
        data-reliability={reading.reliability}
        style={{ width: radius * 2, height: radius * 2, translate: `${css.x - radius}px ${css.y - radius}px` }}
      />
      <div ref={label} className="ring-label" aria-hidden="true">
        <strong>{titles[reading.reliability]}</strong>
        <span>{detailOf(reading.sentence)}</span>
        {neutral && (
          <span>
            red {formatNumber(neutral.redStops, 2, true)}, blue {formatNumber(neutral.blueStops, 2, true)} stop
          </span>
        )}
      </div>
    </>
  )
}
