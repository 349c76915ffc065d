// Two marks blended: the share of the second is set on a slider, the picture follows, and the blend can be kept or adopted.
import { useEffect, useMemo, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { Group } from 'react-aria-components/Group'

import { blendGains } from '../../analysis/blend-gains.ts'
import type { Mark } from '../../edits/marks.ts'
import { slider } from '../../operations/controls.ts'
import { ScaleSlider } from '../controls/scale-slider.tsx'
import { pointAtNeutral } from '../screen-store.ts'
import { useWorkbench } from '../workbench-context.tsx'

const evenShare = 50

interface BlendBarProps {
  readonly first: Mark
  readonly second: Mark
  readonly onDone: () => void
}

export function BlendBar({ first, second, onDone }: BlendBarProps) {
  const workbench = useWorkbench()
  const [share, setShare] = useState(evenShare)
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
  const show = () => pointAtNeutral({ name, gains, place: null })
  const hide = () => pointAtNeutral(null)
  useEffect(() => {
    pointAtNeutral({ name, gains, place: null })
    return () => pointAtNeutral(null)
  }, [name, gains])

  return (
    <Group
      className="blend-bar"
      aria-label={`Blend of ${first.name} and ${second.name}`}
      onPointerEnter={show}
      onPointerLeave={hide}
      onFocus={show}
      onBlur={hide}
    >
      <div className="blend-ends">
        <span>{first.name}</span>
        <span className="blend-share">
          {100 - share} : {share}
        </span>
        <span>{second.name}</span>
      </div>
      <ScaleSlider
        control={control}
        value={share}
        gesture={{
          change: (value) => setShare(Number(value)),
          set: (value) => setShare(Number(value)),
          end() {},
          cancel() {},
        }}
      />
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
          className="button quiet"
          onPress={() => {
            workbench.adoptNeutral(gains, `Neutral of ${name}`)
            onDone()
          }}
        >
          Adopt
        </Button>
      </div>
    </Group>
  )
}
