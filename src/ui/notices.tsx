// Messages of the program: spoken politely, the newest in sight, earlier ones folded behind it, gone when dismissed.
import { CircleAlert, Info, X } from 'lucide-react'
import { useEffect, useState } from 'react'
import { Button } from 'react-aria-components/Button'

import type { Notice } from '../workbench/session.ts'
import { IconButton } from './icon-button.tsx'
import { useSession, useWorkbench } from './workbench-context.tsx'

/** Time after which a note that asks nothing goes by itself, in ms (our choice): long enough to be read twice. */
const noteStaysMs = 12_000

function NoticeCard({ notice, dismiss }: { notice: Notice; dismiss: () => void }) {
  const { answer } = notice
  const goesByItself = notice.tone === 'note' && !answer
  useEffect(() => {
    if (!goesByItself) return
    const timer = setTimeout(dismiss, noteStaysMs)
    return () => clearTimeout(timer)
    // Counted from when the note appears, whatever is drawn anew meanwhile.
    // oxlint-disable-next-line react-hooks/exhaustive-deps
  }, [notice.id, goesByItself])
  return (
    <div className="notice" data-tone={notice.tone}>
      {notice.tone === 'problem' ? <CircleAlert aria-hidden="true" /> : <Info aria-hidden="true" />}
      <div className="notice-words">
        <p>
          {notice.tone === 'problem' && <span className="visually-hidden">Problem: </span>}
          {notice.text}
        </p>
        {answer && (
          <Button
            className="button"
            onPress={() => {
              answer.act()
              dismiss()
            }}
          >
            {answer.words}
          </Button>
        )}
      </div>
      <IconButton label="Dismiss" onPress={dismiss}>
        <X />
      </IconButton>
    </div>
  )
}

export function Notices() {
  const workbench = useWorkbench()
  const notices = useSession((session) => session.notices)
  const [seesEarlier, setSeesEarlier] = useState(false)
  const earlier = notices.length - 1
  const seen = seesEarlier ? notices : notices.slice(-1)
  const dismiss = (notice: Notice) => workbench.dismissNotice(notice.id)
  return (
    <div className="notices">
      {earlier > 0 && (
        <div className="notices-earlier">
          <Button className="button quiet" aria-expanded={seesEarlier} onPress={() => setSeesEarlier(!seesEarlier)}>
            {seesEarlier ? 'Only the newest' : `${earlier} earlier`}
          </Button>
          <Button className="button quiet" onPress={() => notices.forEach(dismiss)}>
            Dismiss all
          </Button>
        </div>
      )}
      <div className="notices-list" role="log" aria-live="polite" aria-label="Messages">
        {seen.map((notice) => (
          <NoticeCard key={notice.id} notice={notice} dismiss={() => dismiss(notice)} />
        ))}
      </div>
    </div>
  )
}
