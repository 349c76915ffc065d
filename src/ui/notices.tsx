// Messages of the program: spoken politely, shown over the surround, gone when dismissed.
import { CircleAlert, Info, X } from 'lucide-react'

import { IconButton } from './icon-button.tsx'
import { useSession, useWorkbench } from './workbench-context.tsx'

export function Notices() {
  const workbench = useWorkbench()
  const notices = useSession((session) => session.notices)
  return (
    <div className="notices" role="log" aria-live="polite" aria-label="Messages">
      {notices.map((notice) => (
        <div key={notice.id} className="notice" data-tone={notice.tone}>
          {notice.tone === 'problem' ? <CircleAlert aria-hidden="true" /> : <Info aria-hidden="true" />}
          <p>
            {notice.tone === 'problem' && <span className="visually-hidden">Problem: </span>}
            {notice.text}
          </p>
          <IconButton label="Dismiss" onPress={() => workbench.dismissNotice(notice.id)}>
            <X />
          </IconButton>
        </div>
      ))}
    </div>
  )
}
