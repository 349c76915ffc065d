// A ruled scale of wavelengths: what eyes see, what a converted sensor sees, and where common filters begin to let through.
import { commonCutOnsNm } from './cut-ons.ts'

/** Ends of the scale in nm: about what silicon behind a clear window sees (common practice, no source). */
const fromNm = 380
const toNm = 1000
/** Where the visible ends for most eyes, in nm (common practice, no source). */
const visibleEndNm = 700

const xOf = (nm: number) => `${((nm - fromNm) / (toNm - fromNm)) * 100}%`

export function WavelengthRule() {
  const ticks = Array.from({ length: 32 }, (_, i) => 380 + i * 20)
  return (
    <figure className="wavelengths">
      <svg aria-hidden="true">
        {ticks.map((nm) => (
          <line key={nm} className="tick-short" x1={xOf(nm)} x2={xOf(nm)} y1={36} y2={nm % 100 === 0 ? 46 : 41} />
        ))}
        <line className="tick-long" x1="0" x2="100%" y1={36} y2={36} />
        {commonCutOnsNm.map((nm) => (
          <g key={nm}>
            <line className="tick-initial" x1={xOf(nm)} x2={xOf(nm)} y1={22} y2={36} />
            <text x={xOf(nm)} y={14}>
              {nm}
            </text>
          </g>
        ))}
        <line className="tick-reach" x1="0" x2={xOf(visibleEndNm)} y1={56} y2={56} />
        <line className="tick-reach" x1={xOf(visibleEndNm)} x2="100%" y1={56} y2={56} />
        <line className="tick-reach" x1={xOf(visibleEndNm)} x2={xOf(visibleEndNm)} y1={50} y2={62} />
        <text className="reach-name" x={xOf((fromNm + visibleEndNm) / 2)} y={74}>
          visible light
        </text>
        <text className="reach-name" x={xOf((visibleEndNm + toNm) / 2)} y={74}>
          infrared
        </text>
      </svg>
      <figcaption>Cut-on wavelengths of common long-pass filters, in nm</figcaption>
    </figure>
  )
}
