// The pad: painted ground, kelvin line, grid, and on them the marks, the probe's place and the neutral.
import { useEffect, useRef, type KeyboardEvent } from 'react'

import type { NeutralGains } from '../../edits/marks.ts'
import type { NeutralOutlook } from '../../workbench/neutral-outlook.ts'
import { useForgetPointed } from '../board/neutral-preview.ts'
import { useSession, useShownEdit, useWorkbench } from '../workbench-context.tsx'
import { KelvinLine } from './kelvin-line.tsx'
import type { KelvinScale } from './kelvin-scale.ts'
import { MarkDot } from './mark-dot.tsx'
import { nameSides } from './name-sides.ts'
import { NeutralDot, planeChangeName } from './neutral-dot.tsx'
import { usePadPointer, usePadWheel } from './pad-pointer.ts'
import { PlaneGrid } from './plane-grid.tsx'
import { PlanePainting } from './plane-painting.tsx'
import { type PadSize, pannedView, type PlaneView, pointOf, zoomedView } from './plane-view.ts'

/** Zoom of one key or button press, and CSS pixels of one arrow press on the pad (our choice). */
export const zoomNotch = 1.5
const arrowPx = 32

interface PlanePadProps {
  readonly stepId: string
  readonly gains: NeutralGains
  readonly outlook: NeutralOutlook
  readonly patch: readonly number[]
  readonly scale: KelvinScale | null
  readonly view: PlaneView
  readonly size: PadSize
  readonly onView: (change: (view: PlaneView) => PlaneView) => void
  readonly onSize: (size: PadSize) => void
  readonly onFit: () => void
}

function useSize(onSize: (size: PadSize) => void) {
  const element = useRef<HTMLDivElement>(null)
  useEffect(() => {
    const observer = new ResizeObserver(
      ([
        {
          contentRect: { width, height },
        },
      ]) => onSize({ width, height }),
    )
    observer.observe(element.current!)
    return () => observer.disconnect()
  }, [onSize])
  return element
}

function ProbePlace({ view, size }: { view: PlaneView; size: PadSize }) {
  const neutral = useSession((session) => session.probe?.neutral)
  if (!neutral) return null
  const { x, y } = pointOf(view, size, neutral)
  return <span className="plane-probe" style={{ translate: `${x}px ${y}px` }} aria-hidden="true" />
}

export function PlanePad(props: PlanePadProps) {
  const { stepId, gains, outlook, patch, scale, view, size, onView, onSize, onFit } = props
  const workbench = useWorkbench()
  const marks = useShownEdit((edit) => edit?.marks) ?? []
  const pad = useSize(onSize)
  useForgetPointed()
  const pointer = usePadPointer({
    view,
    size,
    onView,
    onPlace: (placed) => workbench.setValues(stepId, { ...placed }, planeChangeName),
  })
  usePadWheel(pad, size, onView)

  const names = nameSides(
    marks.map((mark) => ({ ...pointOf(view, size, mark.gains), name: mark.name })),
    [pointOf(view, size, gains)],
    size,
  )
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return
    const [x, y] = [size.width / 2, size.height / 2]
    const acts: Record<string, () => void> = {
      ArrowLeft: () => onView((now) => pannedView(now, arrowPx, 0)),
      ArrowRight: () => onView((now) => pannedView(now, -arrowPx, 0)),
      ArrowUp: () => onView((now) => pannedView(now, 0, arrowPx)),
      ArrowDown: () => onView((now) => pannedView(now, 0, -arrowPx)),
      '+': () => onView((now) => zoomedView(now, size, x, y, zoomNotch)),
      '-': () => onView((now) => zoomedView(now, size, x, y, 1 / zoomNotch)),
      Home: onFit,
    }
    if (!acts[event.key]) return
    acts[event.key]()
    event.preventDefault()
    event.stopPropagation()
  }

  return (
    <div
      ref={pad}
      className="plane-pad"
      role="application"
      aria-label="Neutral plane: red to green across, blue to green up"
      aria-describedby="plane-keys"
      // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- an application takes keys of its own
      tabIndex={0}
      {...pointer}
      {...{ onKeyDown }}
    >
      {size.width > 0 && (
        <>
          <PlanePainting outlook={outlook} patch={patch} view={view} size={size} />
          <PlaneGrid view={view} size={size} />
          <div className="plane-points">
            {scale && <KelvinLine scale={scale} view={view} size={size} />}
            {marks.map((mark, i) => (
              <MarkDot key={mark.id} mark={mark} nameSide={names[i]} view={view} size={size} />
            ))}
            <ProbePlace view={view} size={size} />
            <NeutralDot stepId={stepId} gains={gains} view={view} size={size} />
          </div>
        </>
      )}
      <p id="plane-keys" hidden>
        Arrow keys move the pad, plus and minus zoom, Home shows all points. Tab goes to the points; arrow keys move
        them.
      </p>
    </div>
  )
}
