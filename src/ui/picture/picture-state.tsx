// What stands in for the picture while there is none: how far its making is, or why it could not be made.
import { FrameProgress } from '../frames/frame-progress.tsx'
import { useSession } from '../workbench-context.tsx'

export function PictureState() {
  const entry = useSession((session) => session.entries.find((one) => one.id === session.shownId))
  const hasPicture = useSession((session) => session.shown !== null && session.shown.id === session.shownId)
  if (!entry || hasPicture) return null
  const { state, fileName } = entry
  return (
    <div className="picture-state">
      <h2>{state.kind === 'failed' ? `${fileName} could not be opened` : fileName}</h2>
      {state.kind === 'failed' ? <p>{state.reason}</p> : <FrameProgress state={state} />}
    </div>
  )
}
