// A 3×3 channel mix: what each channel of the result is made of, as signed bars that are dragged, stepped by keys or typed.
// With sums held, what one weight takes the others of its row give, so that greys stay grey while colours are moved.
import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { Group } from 'react-aria-components/Group'
import { Switch } from 'react-aria-components/Switch'

import {
  CYCLIC_MIX,
  CYCLIC_MIX_BACK,
  IDENTITY_MIX,
  RED_BLUE_EXCHANGE,
  isNearSingular,
  rowSums,
  withWeight,
} from '../../colour/mix-matrices.ts'
import { determinant, multiply, type Mat3 } from '../../math/mat3.ts'
import { formatNumber } from '../../text/format-number.ts'
import { useGesture } from './gesture.ts'
import { MixCell } from './mix-cell.tsx'
import type { NumbersEditorProps } from './numbers-editor-props.ts'
import { PartialExchange } from './partial-exchange.tsx'

const channels = ['Red', 'Green', 'Blue'] as const
/** A sum this near to 1 keeps greys grey as far as anyone can see (our choice). */
const greyTolerance = 0.0005

const moves = [
  { label: 'On by one', hint: 'Red to green, green to blue, blue to red', by: CYCLIC_MIX },
  { label: 'Back by one', hint: 'Red to blue, blue to green, green to red', by: CYCLIC_MIX_BACK },
] as const

export function MixEditor({ stepId, controlKey, numbers: mix }: NumbersEditorProps) {
  const gesture = useGesture(stepId, controlKey, 'Channel weight')
  const exchange = useGesture(stepId, controlKey, 'Red/blue exchange')
  const cycle = useGesture(stepId, controlKey, 'Channels moved on')
  const sums = rowSums(mix)
  const keepsGrey = sums.every((sum) => Math.abs(sum - 1) < greyTolerance)
  const [holdsSums, setHoldsSums] = useState(keepsGrey)
  const withOne = (from: Mat3, index: number, weight: number) =>
    holdsSums ? withWeight(from, index, weight) : from.with(index, weight)

  return (
    <div className="mix-editor">
      <Button className="button wide" onPress={() => exchange.set(multiply(RED_BLUE_EXCHANGE, mix))}>
        Exchange red and blue
      </Button>
      <Group className="mix-moves" aria-label="Move all channels">
        {moves.map(({ label, hint, by }) => (
          <Button
            key={label}
            className="button"
            aria-label={`${label}: ${hint.toLowerCase()}`}
            onPress={() => cycle.set(multiply(by, mix))}
          >
            {label}
          </Button>
        ))}
      </Group>
      <PartialExchange stepId={stepId} controlKey={controlKey} mix={mix} />
      <table className="mix-table">
        <caption>Each channel of the result is made of</caption>
        <thead>
          <tr>
            <th scope="col">
              <span className="visually-hidden">result</span>
            </th>
            {channels.map((channel) => (
              <th key={channel} scope="col">
                {channel.toLowerCase()}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {channels.map((channel, row) => (
            <tr key={channel}>
              <th scope="row">
                {channel}
                <span className="mix-sum">sum {formatNumber(sums[row], 2)}</span>
              </th>
              {channels.map((from, column) => (
                <MixCell
                  key={from}
                  label={`${from} in ${channel.toLowerCase()}`}
                  weight={mix[row * 3 + column]}
                  mix={mix}
                  gesture={gesture}
                  withWeight={(from, weight) => withOne(from, row * 3 + column, weight)}
                />
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <Switch className="switch-row" isSelected={holdsSums} onChange={setHoldsSums}>
        <span className="control-label">Hold the sum of each row</span>
        <span className="switch-state">{holdsSums ? 'on' : 'off'}</span>
        <span className="lamp" />
      </Switch>
      <p className="control-note">
        {keepsGrey ? 'Greys stay grey.' : 'A row that does not sum to 1 tints greys.'} Determinant{' '}
        {formatNumber(determinant(mix), 3)}.
      </p>
      {isNearSingular(mix) && (
        <p className="control-warning">
          This mix nearly loses one direction of colour: different colours fall together, and no later step can part
          them.
        </p>
      )}
      {mix.some((weight, i) => weight !== IDENTITY_MIX[i]) && (
        <Button className="button quiet" onPress={() => gesture.set(IDENTITY_MIX)}>
          Back to no mix
        </Button>
      )}
    </div>
  )
}
