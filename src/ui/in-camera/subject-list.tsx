// Subjects as bars: how far each lies from grey behind the chosen filter, nearest first.
import { formatNumber } from '../../text/format-number.ts'
import type { Light } from './advice.ts'
import { atCutOn, servesBelowStops, subjects, tintsBelowStops } from './subjects.ts'

/** Stops at the right end of the rule (our choice): grass behind 550 nm, the farthest of all, lies just inside. */
const longestStops = 1

const words = (stops: number) =>
  stops < servesBelowStops ? 'serves as grey' : stops < tintsBelowStops ? 'tints a little' : 'tints strongly'

/** What becomes of the numbers, computed in sunlight, in another light. */
const inLight: Record<Light, string | null> = {
  sun: null,
  overcast: 'Under an overcast sky they change by 0.02 stop at most.',
  shade: 'In open shade they are up to a third larger, in the same order.',
}

export function SubjectList({ filterNm, light }: { filterNm: number; light: Light }) {
  const rows = subjects
    .map((subject) => ({ name: subject.name, stops: atCutOn(subject.stops, filterNm) }))
    .toSorted((a, b) => a.stops - b.stops)
  return (
    <table className="subjects">
      <caption>
        How far from grey, in stops, behind {filterNm} nm in sunlight. {inLight[light]}
      </caption>
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
