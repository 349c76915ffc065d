// A 3×3 channel mix: what each output channel takes from red, green and blue, with the sums that tell whether greys stay grey.
import { Button } from 'react-aria-components/Button'

import { IDENTITY_MIX, RED_BLUE_EXCHANGE, isNearSingular, rowSums } from '../../colour/mix-matrices.ts'
import { determinant, multiply } from '../../math/mat3.ts'
import { formatNumber } from '../format-number.ts'
import { useGesture } from './gesture.ts'
import { NumberField } from './number-field.tsx'
import type { NumbersEditorProps } from './numbers-editors.ts'

const channels = ['Red', 'Green', 'Blue'] as const
/** A sum this near to 1 keeps greys grey as far as anyone can see (our choice). */
const greyTolerance = 0.0005

export function MixEditor({ stepId, controlKey, numbers: mix }: NumbersEditorProps) {
  const gesture = useGesture(stepId, controlKey, 'Channel weight')
  const exchange = useGesture(stepId, controlKey, 'Red/blue exchange')
  const sums = rowSums(mix)
  const keepsGrey = sums.every((sum) => Math.abs(sum - 1) < greyTolerance)

  return (
    <div className="mix-editor">
      <Button className="button wide" onPress={() => exchange.set(multiply(RED_BLUE_EXCHANGE, mix))}>
        Exchange red and blue
      </Button>
      <table className="mix-table">
        <caption>Each channel of the result takes</caption>
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
            <th scope="col">sum</th>
          </tr>
        </thead>
        <tbody>
          {channels.map((channel, row) => (
            <tr key={channel}>
              <th scope="row">{channel}</th>
              {channels.map((from, column) => (
                <td key={from}>
                  <NumberField
                    label={`${from} in ${channel.toLowerCase()}`}
                    value={mix[row * 3 + column]}
                    decimals={2}
                    step={0.05}
                    onCommit={(weight) => gesture.set(mix.with(row * 3 + column, weight))}
                  />
                </td>
              ))}
              <td className="mix-sum">{formatNumber(sums[row], 2)}</td>
            </tr>
          ))}
        </tbody>
      </table>
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
