// Subjects as bars: how far each lies from grey behind the chosen filter, nearest first.
import { formatNumber } from '../format-number.ts'
import { atCutOn, servesBelowStops, subjects, tintsBelowStops } from './subjects.ts'

/** Stops at the right end of the rule (our choice): grass behind 550 nm, the farthest of all, lies just inside. */
const longestStops = 1

const words = (stops: number) =>
  stops < servesBelowStops ? 'serves as grey' : stops < tintsBelowStops ? 'tints a little' : 'tints strongly'

export function SubjectList({ filterNm }: { filterNm: number }) {
  const rows = subjects
    .map((subject) => ({ name: subject.name, stops: atCutOn(subject.stops, filterNm) }))
    .toSorted((a, b) => a.stops - b.stops)
  return (
    <table className="subjects">
      <caption>How far from grey, in stops, behind {filterNm} nm in sunlight</caption>
      <tbody>
        {rows.map(({ name, stops }) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td className="subject-rule">
              <span style={{ width: `${(stops / longestStops) * 100}%` }} />
              {formatNumber(stops, 2)}
            </td>
            <td>{words(stops)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
