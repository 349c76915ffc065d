// The neutrals of this roll by camera and filter, for those who set their camera by numbers or want to see how steady they were.
import { formatNumber } from '../../text/format-number.ts'
import { filterWords } from '../frames/cut-ons.ts'
import { groupNeutrals, type NeutralGroup } from '../../workbench/roll-neutrals.ts'
import { useWorkbench } from '../workbench-context.tsx'

const stops = (value: number) => formatNumber(value, 2, true)

function Group({ group }: { group: NeutralGroup }) {
  const { camera, filterNm, frames, log2RedGreen, log2BlueGreen, spreadStops } = group
  return (
    <table className="roll-neutrals">
      <caption>{[camera || 'camera not named', filterWords(filterNm)].join(', ')}</caption>
      <thead>
        <tr>
          <th scope="col">Frame</th>
          <th scope="col">red / green</th>
          <th scope="col">blue / green</th>
        </tr>
      </thead>
      <tbody>
        {frames.map((frame) => (
          <tr key={frame.frameId}>
            <th scope="row">{frame.fileName}</th>
            <td>{stops(frame.log2RedGreen)}</td>
            <td>{stops(frame.log2BlueGreen)}</td>
          </tr>
        ))}
      </tbody>
      {frames.length > 1 && (
        <tfoot>
          <tr>
            <th scope="row">
              Mean of {frames.length}, spread {formatNumber(spreadStops, 2)}
            </th>
            <td>{stops(log2RedGreen)}</td>
            <td>{stops(log2BlueGreen)}</td>
          </tr>
        </tfoot>
      )}
    </table>
  )
}

export function RollTable() {
  const groups = groupNeutrals(useWorkbench().rollNeutrals())
  if (groups.length === 0) return <p>No frame of a roll is open yet.</p>
  return groups.map((group) => <Group key={`${group.camera} ${group.filterNm}`} group={group} />)
}
