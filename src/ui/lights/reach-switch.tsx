// Lays over the picture where a step acts.
import { Switch } from 'react-aria-components/Switch'

import { useSession, useWorkbench } from '../workbench-context.tsx'

export function ReachSwitch({ stepId, label }: { stepId: string; label: string }) {
  const workbench = useWorkbench()
  const shown = useSession(({ reachOf }) => reachOf === stepId)
  return (
    <Switch className="switch-row" isSelected={shown} onChange={(show) => workbench.showReach(show ? stepId : null)}>
      <span className="control-label">{label}</span>
      <span className="switch-state">{shown ? 'on' : 'off'}</span>
      <span className="lamp" />
    </Switch>
  )
}
