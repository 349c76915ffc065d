// Undo and redo, each naming what it would take back or bring again.
import { Redo2, Undo2 } from 'lucide-react'
import { Group } from 'react-aria-components/Group'

import { IconButton } from './icon-button.tsx'
import { useShownEdit, useWorkbench } from './workbench-context.tsx'

export function HistoryButtons() {
  const workbench = useWorkbench()
  const undoName = useShownEdit((edit) => edit?.undoName ?? null)
  const redoName = useShownEdit((edit) => edit?.redoName ?? null)
  return (
    <Group className="history" aria-label="History">
      <IconButton
        label={undoName ? `Undo: ${undoName}` : 'Nothing to undo'}
        className="named"
        isDisabled={undoName === null}
        onPress={workbench.undo}
      >
        <Undo2 />
        {undoName && <span className="history-name">{undoName}</span>}
      </IconButton>
      <IconButton
        label={redoName ? `Redo: ${redoName}` : 'Nothing to redo'}
        isDisabled={redoName === null}
        onPress={workbench.redo}
      >
        <Redo2 />
      </IconButton>
    </Group>
  )
}
