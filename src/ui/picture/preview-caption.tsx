// Says that the picture shows what is pointed at, and not what the frame keeps; on a divided picture its half says so.
import { usePreviewName } from './preview-name.ts'
import { useSession } from '../workbench-context.tsx'

export function PreviewCaption() {
  const name = usePreviewName()
  const isDivided = useSession((session) => session.divide !== null)
  return name !== null && !isDivided && <p className="preview-caption">{name}</p>
}
