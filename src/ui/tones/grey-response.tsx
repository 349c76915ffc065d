// What black and white makes of the reference places, and what a grey is made of with the present weights.
import type { TracedColour } from '../../pipeline/trace-chain.ts'
import { greyShares } from '../../operations/black-and-white.ts'
import { formatNumber } from '../../text/format-number.ts'
import type { StepRoomProps } from '../panel/step-room-props.ts'
import { cssColour, usePlaceColours } from '../readings/place-colours.ts'

/** OKLab lightness of a grey in %, the cube root of its level. */
const lightness = ({ rgb }: TracedColour) => formatNumber(Math.cbrt(rgb[1]) * 100, 0)
const percent = (share: number) => `${formatNumber(share * 100, 0)} %`

export function GreyResponse({ step }: StepRoomProps) {
  const places = usePlaceColours((colours) => colours.places)
  const ways = usePlaceColours((colours) => colours.ways)
  const [red, green, blue] = greyShares(
    ...(['red', 'green', 'blue'].map((name) => Number(step.values[name])) as [number, number, number]),
  )
  return (
    <div className="room">
      {step.enabled && (
        <table className="grey-response">
          <caption className="visually-hidden">Reference places before and after this step</caption>
          <tbody>
            {ways.map((way, i) => {
              const at = way.findIndex((colour) => colour.stepId === step.id)
              const name = places[i]?.name
              if (at < 1 || name === undefined) return null
              return (
                <tr key={`${i} ${name}`}>
                  <th scope="row">
                    <span className="visually-hidden">Place </span>
                    {name}
                  </th>
                  <td className="before-after">
                    <span className="visually-hidden">before and after</span>
                    <span className="patch" style={{ background: cssColour(way[at - 1]) }} />
                    <span className="patch" style={{ background: cssColour(way[at]) }} />
                  </td>
                  <td>
                    <span className="visually-hidden">lightness </span>
                    {lightness(way[at])}
                  </td>
                </tr>
              )
            })}
          </tbody>
        </table>
      )}
      <p className="control-note">
        Grey is made of {percent(red)} red, {percent(green)} green and {percent(blue)} blue. Weights of 0 are a third
        each; a neutral keeps its level.
      </p>
    </div>
  )
}
