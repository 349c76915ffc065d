// How far the file is from the chain, in numbers, over the frame's own colours and over even ones.
import type { TableAccuracy } from '../../export/table-accuracy.ts'
import type { TableFile } from '../../export/table-file.ts'
import type { BakedTable } from './baked-table.ts'

/** A difference to two digits behind the point; what is less than half of the last is no difference to speak of. */
const differenceText = (value: number) => (value < 0.005 ? '0' : value.toFixed(2))

/** Shares below this are corners that nobody misses. */
const worthSaying = 0.002

function Row({ label, accuracy }: { label: string; accuracy: TableAccuracy | null }) {
  const cells = accuracy && accuracy.count > 0 ? [accuracy.mean, accuracy.p99, accuracy.largest] : [null, null, null]
  return (
    <tr>
      <th scope="row">{label}</th>
      {cells.map((value, i) => (
        <td key={['mean', 'p99', 'largest'][i]}>{value === null ? '–' : differenceText(value)}</td>
      ))}
    </tr>
  )
}

const percentText = (share: number) => (share < 0.01 ? 'Less than 1 %' : `${Math.round(share * 100)} %`)

/** What lies outside the file: of the frame before all, else of the even colours, which every space but a wide one cuts. */
function outsideWords({ ofFrame, ofGrid }: Pick<TableFile, 'ofFrame' | 'ofGrid'>): string | null {
  if (ofFrame.outside >= worthSaying)
    return `${percentText(ofFrame.outside)} of this frame’s colours lie outside the numbers of the file and end at its edge; they are not counted above.`
  if (ofGrid.outside >= worthSaying)
    return `${percentText(ofGrid.outside)} of the colours spread evenly lie outside the numbers of the file, none of this frame’s to speak of; they are not counted above.`
  return null
}

export function AccuracyTable({ baked }: { baked: BakedTable }) {
  const file = baked.state === 'done' ? baked.file : null
  const outside = file && outsideWords(file)
  return (
    <div className="map-accuracy" aria-busy={baked.state === 'working'}>
      <table>
        <caption>Difference from the chain, ΔE00</caption>
        <thead>
          <tr>
            <th scope="col">Colours</th>
            <th scope="col">mean</th>
            <th scope="col">99 of 100</th>
            <th scope="col">largest</th>
          </tr>
        </thead>
        <tbody>
          <Row label="of this frame" accuracy={file?.ofFrame ?? null} />
          <Row label="spread evenly" accuracy={file?.ofGrid ?? null} />
        </tbody>
      </table>
      <output className="control-note">
        {baked.state === 'failed' && baked.reason}
        {baked.state === 'working' && 'Making and measuring the file …'}
        {baked.state === 'done' && (outside ?? '1 is about the least difference that is seen side by side.')}
      </output>
    </div>
  )
}
