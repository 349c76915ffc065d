// A ruled scale of wavelengths: what eyes see, what a converted sensor sees, and where common filters begin to let through.
import { commonCutOnsNm } from '../frames/cut-ons.ts'

/** Ends of the scale in nm: about what silicon behind a clear window sees (common practice, no source). */
const fromNm = 380
const toNm = 1000
/** Where the visible ends for most eyes, in nm (common practice, no source). */
const visibleEndNm = 700

const xOf = (nm: number) => `${((nm - fromNm) / (toNm - fromNm)) * 100}%`

/** The whole scale is drawn as lines; a caption beside it says what the numbers are. */
export function WavelengthRule() {
  const ticks = Array.from({ length: 32 }, (_, i) => fromNm + i * 20)
  const line = (nm: number, kind: string, from: number, to: number) => (
    <line key={`${kind}${nm}`} className={kind} x1={xOf(nm)} x2={xOf(nm)} y1={from} y2={to} />
  )
  return (
    <div className="wavelengths" aria-hidden="true">
      <svg>
        {ticks.map((nm) => line(nm, 'tick-short', 36, nm % 100 === 0 ? 46 : 41))}
        {commonCutOnsNm.map((nm) => line(nm, 'tick-initial', 22, 36))}
        {commonCutOnsNm.map((nm) => (
          <text key={nm} x={xOf(nm)} y={14}>
            {nm}
          </text>
        ))}
        <line className="tick-long" x1="0" x2="100%" y1={36} y2={36} />
        {line(visibleEndNm, 'tick-long', 36, 76)}
        <text className="reach-name" x={xOf((fromNm + visibleEndNm) / 2)} y={66}>
          visible light
        </text>
        <text className="reach-name" x={xOf((visibleEndNm + toNm) / 2)} y={66}>
          infrared
        </text>
      </svg>
    </div>
  )
}
