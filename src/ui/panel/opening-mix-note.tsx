// What the mix of a developed file does there, while it is as the file opened with.
import { openingMix } from '../../edits/default-chain.ts'
import { useSession } from '../workbench-context.tsx'
import type { StepRoomProps } from './step-room-props.ts'

export function OpeningMixNote({ step }: StepRoomProps) {
  const facts = useSession((session) => session.shown?.facts)
  const space = useSession((session) => session.shown?.developed?.space)
  if (!facts || space === undefined) return null
  const primaries = openingMix({ ...facts, filterNm: null })
  const rows = JSON.stringify(step.values.rows)
  if (!primaries || rows !== JSON.stringify(openingMix(facts))) return null
  return (
    <p className="control-note">
      Takes the file’s own primaries ({space}) to the working ones
      {rows === JSON.stringify(primaries) ? '' : ' and exchanges red and blue'}: it opened with this, and without it its
      colours are not as they were made.
    </p>
  )
}
