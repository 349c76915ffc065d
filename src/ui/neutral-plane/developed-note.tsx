// One line where a neutral is looked for in a developed file: its numbers stretch less far than those of a raw file.
import { useSession } from '../workbench-context.tsx'

export function DevelopedNote() {
  const developed = useSession((session) => session.shown?.developed)
  if (!developed) return null
  const { format, bits } = developed
  return (
    <p className="control-note">
      {format} of {bits} bits: developed before, with less room than a raw file.
    </p>
  )
}
