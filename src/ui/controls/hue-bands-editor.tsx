// Hue bands as threads between two rails: the upper rail is the circle of hues as it comes, the lower as it leaves. Each band is
// a thread from its own hue to what becomes of it; both ends are dragged or stepped by keys, the chosen band's numbers stand below.
import { Button } from 'react-aria-components/Button'
import { useStore } from 'zustand'

import { slider } from '../../operations/controls.ts'
import { type HueBand, hueBands, readBands, wholeTurnDeg, writeBands } from '../../operations/hue-bands.ts'
import { chooseBand, screen } from '../screen-store.ts'
import { useStepTool } from '../step-tool.ts'
import { partOf, useGesture } from './gesture.ts'
import { HueEnd } from './hue-end.tsx'
import { HueRail } from './hue-rail.tsx'
import type { NumbersEditorProps } from './numbers-editor-props.ts'
import { SliderRow } from './slider-row.tsx'

const rows = {
  hueDeg: slider('Hue of the band', '°', 0, 360, 1, 0),
  turnDeg: slider('Turned by', '°', -90, 90, 1, 0),
  strengthStops: slider('Strength', 'stop', -2, 2, 0.05, 0),
  lightEv: slider('Light', 'EV', -2, 2, 0.05, 0),
} as const
const keys = Object.keys(rows) as (keyof HueBand)[]

/** Threads that leave the rails on one side come in on the other. */
const laps = [-360, 0, 360]

export function HueBandsEditor({ stepId, controlKey, numbers }: NumbersEditorProps) {
  const gesture = useGesture(stepId, controlKey, 'Hue band')
  const chosen = useStore(screen, ({ chosenBand }) => chosenBand)
  const { isOut: picking, toggle } = useStepTool('hue pick')
  const bands = readBands(numbers)
  const initial = readBands(hueBands.controls.bands.initial)
  const part = (index: number, key: keyof HueBand) =>
    partOf(gesture, (value: number) =>
      writeBands(bands.with(index, { ...bands[index], [key]: key === 'hueDeg' ? wholeTurnDeg(value) : value })),
    )
  const plainBand = (index: number) => ({ ...bands[index], turnDeg: 0, strengthStops: 0, lightEv: 0 })
  const end = (band: HueBand, index: number, key: 'hueDeg' | 'turnDeg') => (
    <HueEnd
      key={`${key}${index}`}
      number={index + 1}
      band={band}
      end={key}
      chosen={index === chosen}
      initial={key === 'hueDeg' ? initial[index].hueDeg : 0}
      gesture={part(index, key)}
      onChoose={() => chooseBand(index)}
    />
  )

  return (
    <div className="hue-editor">
      <Button className="button wide" aria-pressed={picking} onPress={toggle}>
        {picking ? 'Put the hue picker away' : 'Pick a hue in the picture'}
      </Button>
      {picking && (
        <p className="control-note">
          Press on a colour and drag: sideways turns its hue, up makes it stronger; with shift up makes it lighter.
        </p>
      )}
      <div className="hue-loom">
        <HueRail />
        <svg className="hue-threads" viewBox="0 0 360 40" preserveAspectRatio="none" aria-hidden="true">
          {bands.flatMap(({ hueDeg, turnDeg }, index) =>
            laps.map((lap) => (
              <line
                key={`${index} ${lap}`}
                className={index === chosen ? 'thread chosen' : 'thread'}
                x1={hueDeg + lap}
                x2={hueDeg + turnDeg + lap}
                y1={0}
                y2={40}
              />
            )),
          )}
        </svg>
        <HueRail />
        {bands.map((band, index) => end(band, index, 'hueDeg'))}
        {bands.map((band, index) => end(band, index, 'turnDeg'))}
      </div>
      <h3>Band {chosen + 1}</h3>
      {keys.map((key) => (
        <SliderRow
          key={key}
          control={key === 'hueDeg' ? { ...rows[key], initial: initial[chosen].hueDeg } : rows[key]}
          value={bands[chosen][key]}
          gesture={part(chosen, key)}
        />
      ))}
      <Button className="button quiet" onPress={() => gesture.set(writeBands(bands.with(chosen, plainBand(chosen))))}>
        Leave this band as it comes
      </Button>
    </div>
  )
}
