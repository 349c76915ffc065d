// Running work: what, how far, how long still, and a way to stop it. Short work never shows (the bar waits half a second).
import { X } from 'lucide-react'
import { Label } from 'react-aria-components/Label'
import { ProgressBar } from 'react-aria-components/ProgressBar'

import type { Task } from '../workbench/session.ts'
import { formatTimeLeft } from '../text/format-number.ts'
import { IconButton } from './icon-button.tsx'
import { useSession, useWorkbench } from './workbench-context.tsx'

function TaskLine({ task }: { task: Task }) {
  const workbench = useWorkbench()
  return (
    <li className="task">
      <ProgressBar className="task-bar" value={(task.fraction ?? 0) * 100} isIndeterminate={task.fraction === null}>
        <Label>{task.label}</Label>
        {task.secondsLeft !== null && <span className="task-time">{formatTimeLeft(task.secondsLeft)}</span>}
        <span className="progress-track" data-unknown={task.fraction === null || undefined}>
          <span style={{ width: `${(task.fraction ?? 0) * 100}%` }} />
        </span>
      </ProgressBar>
      {task.cancellable && (
        <IconButton label={`Cancel: ${task.label}`} onPress={() => workbench.cancelTask(task.id)}>
          <X />
        </IconButton>
      )}
    </li>
  )
}

export function TaskProgress() {
  const tasks = useSession((session) => session.tasks)
  if (tasks.length === 0) return null
  return (
    <ul className="tasks" aria-label="Work in progress">
      {tasks.map((task) => (
        <TaskLine key={task.id} task={task} />
      ))}
    </ul>
  )
}
