// Two marks blended: the share of the second is set on a slider, and the blend can be kept as a mark or made neutral. The picture
// shows it while it is pointed at or has the keys, and no longer.
import { type FocusEvent, type PointerEvent, useEffect, useMemo, useRef, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { Group } from 'react-aria-components/Group'

import { blendGains } from '../../analysis/blend-gains.ts'
import type { Mark } from '../../edits/marks.ts'
import { slider } from '../../operations/controls.ts'
import { ScaleSlider } from '../controls/scale-slider.tsx'
import { leaveNeutral, pointAtNeutral } from '../screen-store.ts'
import { useWorkbench } from '../workbench-context.tsx'

const evenShare = 50

interface BlendBarProps {
  readonly first: Mark
  readonly second: Mark
  readonly onDone: () => void
}

/**
 * Whether the bar is pointed at, with the handlers that find it out: from the pointer's coming, or the keys', until the pointer
 * leaves or the keys go elsewhere. A slider that the pointer has left keeps the keys, but shows nothing until it is moved.
 */
function usePointedAt() {
  const [isPointedAt, setPointedAt] = useState(false)
  const isUnderPointer = useRef(false)
  const show = () => setPointedAt(true)
  const isFinger = ({ pointerType }: PointerEvent) => pointerType === 'touch'
  const handlers = {
    onPointerEnter(event: PointerEvent) {
      if (isFinger(event)) return
      isUnderPointer.current = true
      show()
    },
    onPointerLeave(event: PointerEvent) {
      if (isFinger(event)) return
      isUnderPointer.current = false
      setPointedAt(false)
    },
    onFocus: show,
    onBlur(event: FocusEvent) {
      if (!isUnderPointer.current && !event.currentTarget.contains(event.relatedTarget)) setPointedAt(false)
    },
  }
  return { isPointedAt, show, handlers }
}

export function BlendBar({ first, second, onDone }: BlendBarProps) {
  const workbench = useWorkbench()
  const [share, setShare] = useState(evenShare)
  const { isPointedAt, show, handlers } = usePointedAt()
  const control = useMemo(() => slider(`Share of ${second.name}`, '%', 0, 100, 1, evenShare), [second.name])
  const gains = useMemo(
    () =>
      blendGains([
        { ...first.gains, weight: 100 - share },
        { ...second.gains, weight: share },
      ]),
    [first.gains, second.gains, share],
  )
  const name = `${first.name} ${100 - share} : ${share} ${second.name}`
  useEffect(() => {
    if (!isPointedAt) return
    const pointed = { name: `blend ${name}`, gains, place: null }
    pointAtNeutral(pointed)
    return () => leaveNeutral(pointed)
  }, [isPointedAt, name, gains])
  const move = (value: unknown) => {
    setShare(Number(value))
    show()
  }

  return (
    <Group className="blend-bar" aria-label={`Blend of ${first.name} and ${second.name}`} {...handlers}>
      <h3>Blend</h3>
      <div className="blend-ends">
        <span>{first.name}</span>
        <span className="blend-share">
          {100 - share} : {share}
        </span>
        <span>{second.name}</span>
      </div>
      <ScaleSlider control={control} value={share} gesture={{ change: move, set: move, end() {}, cancel() {} }} />
      <div className="blend-actions">
        <Button
          className="button"
          onPress={() => {
            workbench.addMark(gains, null, name)
            onDone()
          }}
        >
          Keep as a mark
        </Button>
        <Button
          className="button"
          onPress={() => {
            workbench.adoptNeutral(gains, `Neutral of ${name}`)
            onDone()
          }}
        >
          Make it neutral
        </Button>
      </div>
    </Group>
  )
}
