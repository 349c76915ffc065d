// The numbers of the frame's neutral and of the probe, side by side, and what they would be called on a kelvin scale.
import type { NeutralGains } from '../../edits/marks.ts'
import { formatNumber } from '../format-number.ts'
import { useSession } from '../workbench-context.tsx'
import { kelvinWords, type KelvinScale } from './kelvin-scale.ts'

interface RowProps {
  readonly kind: 'neutral' | 'probe'
  readonly name: string
  readonly gains: NeutralGains | null
  readonly scale: KelvinScale | null
}

function Row({ kind, name, gains, scale }: RowProps) {
  const written = (stops: number | undefined) => (stops === undefined ? '–' : formatNumber(stops, 2, true))
  return (
    <>
      <dt>
        <span className="plane-sign" data-kind={kind} aria-hidden="true" />
        {name}
      </dt>
      <dd>
        <span>red {written(gains?.redStops)}</span> <span>blue {written(gains?.blueStops)}</span>
      </dd>
      {scale && (
        <dd className="kelvin-words">{gains ? kelvinWords(scale, gains) : 'nothing usable under the probe'}</dd>
      )}
    </>
  )
}

/** Alone in following the probe, so that the kept neutral's kelvin are not looked up again at every move. */
function ProbeRow({ scale }: { scale: KelvinScale | null }) {
  const probed = useSession((session) => session.probe?.neutral ?? null)
  return <Row kind="probe" name="Probe" gains={probed} scale={scale} />
}

export function NeutralReadout({ scale, gains }: { scale: KelvinScale | null; gains: NeutralGains }) {
  const probing = useSession((session) => session.tool === 'probe')
  return (
    <>
      <dl className="readout">
        <Row kind="neutral" name="Frame" gains={gains} scale={scale} />
        {probing && <ProbeRow scale={scale} />}
      </dl>
      {!scale && <p className="control-note">No kelvin: the file names no camera matrix.</p>}
    </>
  )
}
