// What the camera wrote about the shown frame, and what went wrong on the way in.
import { TriangleAlert } from 'lucide-react'

import type { ShownFrame } from '../../workbench/session.ts'
import { apertureText, exposureTimeText, takenAtText } from './exposure-text.ts'
import { useSession } from '../workbench-context.tsx'

/** Label and text of every fact that is known. */
function factsOf({ metadata, width, height, sensorKind }: ShownFrame): [string, string][] {
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
    ['Sensor', sensorKind],
  ]
  return rows.filter(([, text]) => text !== '')
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
