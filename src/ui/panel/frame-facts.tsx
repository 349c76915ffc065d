// What the camera wrote about the shown frame, and what went wrong on the way in.
import { TriangleAlert } from 'lucide-react'

import type { Developed } from '../../frame/frame.ts'
import type { ShownFrame } from '../../workbench/session.ts'
import { apertureText, exposureTimeText, takenAtText } from './exposure-text.ts'
import { useSession } from '../workbench-context.tsx'

/** Label and text of every fact that is known. */
function factsOf({ metadata, width, height, sensorKind, developed }: ShownFrame): [string, string][] {
  const exposure = [
    metadata.exposureTimeS && exposureTimeText(metadata.exposureTimeS),
    metadata.apertureF && apertureText(metadata.apertureF),
    metadata.iso && `ISO ${metadata.iso}`,
  ]
  const lens = [metadata.lens, metadata.focalLengthMm && `at ${Number(metadata.focalLengthMm.toFixed(1))} mm`]
  const rows: [string, string][] = [
    ['Camera', [metadata.make, metadata.model].filter(Boolean).join(' ')],
    ['Lens', lens.filter(Boolean).join(' ')],
    ['Exposure', exposure.filter(Boolean).join('  ')],
    ['Taken', metadata.takenAt ? takenAtText(metadata.takenAt) : ''],
    ['Size', `${width} × ${height}`],
    developed
      ? ['File', `${developed.format}, ${developed.bits} bits per channel, ${developed.space}`]
      : ['Sensor', sensorKind],
  ]
  return rows.filter(([, text]) => text !== '')
}

/** What a developed file cannot give any more. */
function roomLeft({ format, bits }: Developed): string {
  const before =
    'A program or camera has developed this file before: its tones are made linear again as far as it tells how.'
  if (bits === 16) return before
  const loss = format === 'JPEG' ? ', and compression blurs colour' : ''
  return `${before} 8 bits per channel leave less room than a raw file: strong gains and shadows show steps${loss}.`
}

export function FrameFactsPanel() {
  const shown = useSession((session) => session.shown)
  if (!shown) return null
  return (
    <section className="facts" aria-labelledby="facts-title">
      <h2 id="facts-title">{shown.fileName}</h2>
      {shown.warnings.map((warning) => (
        <p key={warning} className="control-warning">
          <TriangleAlert aria-hidden="true" />
          <span>
            <span className="visually-hidden">Warning: </span>
            {warning}
          </span>
        </p>
      ))}
      {shown.developed && <p className="control-note">{roomLeft(shown.developed)}</p>}
      <dl>
        {factsOf(shown).map(([label, text]) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
    </section>
  )
}
