// The numbers of the frame's neutral and of the probe, side by side, and what they would be called on a kelvin scale.
import type { NeutralGains } from '../../edits/marks.ts'
import { formatNumber } from '../../text/format-number.ts'
import { useSession } from '../workbench-context.tsx'
import { kelvinWords, type KelvinScale } from './kelvin-scale.ts'

interface RowProps {
  readonly kind: 'neutral' | 'probe'
  readonly name: string
  readonly gains: NeutralGains | null
  readonly scale: KelvinScale | null
  /** What stands for kelvin where there are no gains. */
  readonly without?: string
}

function Row({ kind, name, gains, scale, without = '' }: RowProps) {
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
      {scale && <dd className="kelvin-words">{gains ? kelvinWords(scale, gains) : without}</dd>}
    </>
  )
}

/** Alone in following the probe, so that the frame's kelvin are not looked up again at every move; there whether it is up or not. */
function ProbeRow({ scale }: { scale: KelvinScale | null }) {
  const probed = useSession((session) => session.probe?.neutral ?? null)
  const isUp = useSession((session) => session.tool === 'probe')
  const without = isUp ? 'nothing usable under the probe' : 'put away'
  return <Row kind="probe" name="Probe" gains={probed} scale={scale} without={without} />
}

export function NeutralReadout({ scale, gains }: { scale: KelvinScale | null; gains: NeutralGains }) {
  return (
    <>
      <dl className="readout">
        <Row kind="neutral" name="Frame" gains={gains} scale={scale} />
        <ProbeRow scale={scale} />
      </dl>
      {!scale && <p className="control-note">No kelvin: the file names no camera matrix.</p>}
    </>
  )
}
