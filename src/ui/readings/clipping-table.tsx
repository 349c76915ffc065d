// The legend of a histogram and what lies at its ends, in one small table; its button marks the same places in the picture.
import { Button } from 'react-aria-components/Button'

import type { ClippingShown } from '../../workbench/session.ts'
import { channelNames, LineSample } from './channel-lines.tsx'
import { shareText } from './share-text.ts'
import { useSession, useWorkbench } from '../workbench-context.tsx'

interface ClippingTableProps {
  readonly caption: string
  readonly columns: readonly [low: string, high: string]
  /** For each channel its shares at the low and at the high end; null while they are not known. */
  readonly shares: readonly (readonly [low: number | null, high: number | null])[]
  readonly marks: Exclude<ClippingShown, 'none'>
  readonly button: string
}

export function ClippingTable({ caption, columns, shares, marks, button }: ClippingTableProps) {
  const workbench = useWorkbench()
  const marked = useSession((session) => session.clippingShown === marks)
  return (
    <>
      <table className="clipping-table">
        <caption className="visually-hidden">{caption}</caption>
        <thead>
          <tr>
            <th scope="col">
              <span className="visually-hidden">channel</span>
            </th>
            {columns.map((column) => (
              <th key={column} scope="col">
                {column}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {shares.map((ends, channel) => (
            <tr key={channelNames[channel]}>
              <th scope="row">
                <LineSample channel={shares.length === 1 ? 0 : channel} />
                {shares.length === 1 ? 'All' : channelNames[channel]}
              </th>
              {ends.map((share, end) => (
                <td key={columns[end]}>{share === null ? '–' : shareText(share)}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <Button
        className="button wide"
        aria-pressed={marked}
        onPress={() => workbench.showClipping(marked ? 'none' : marks)}
      >
        {button}
      </Button>
    </>
  )
}
