// How a frame of the roll stands, in words and, while it is being worked on, as a bar.
import { Label } from 'react-aria-components/Label'
import { ProgressBar } from 'react-aria-components/ProgressBar'

import type { EntryState } from '../../workbench/session.ts'

export function FrameProgress({ state }: { state: EntryState }) {
  if (state.kind === 'waiting') return <span className="entry-state">Waiting</span>
  if (state.kind !== 'working') return null
  return (
    <ProgressBar className="progress" value={(state.fraction ?? 0) * 100} isIndeterminate={state.fraction === null}>
      <Label className="entry-state">{state.doing}</Label>
      <span className="progress-track" data-unknown={state.fraction === null || undefined}>
        <span style={{ width: `${(state.fraction ?? 0) * 100}%` }} />
      </span>
    </ProgressBar>
  )
}
