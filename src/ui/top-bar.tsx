// The top line: where one is in the roll, which filter the frame was taken with, its edit as a
// whole, running work, undo and redo by name, help and export.
import { ChevronLeft, ChevronRight, CircleHelp } from 'lucide-react'
import { Button } from 'react-aria-components/Button'
import { Group } from 'react-aria-components/Group'

import { EditMenu } from './frames/edit-menu.tsx'
import { FilterStatement } from './frames/filter-statement.tsx'
import { FrameList } from './frames/frame-list.tsx'
import { HistoryButtons } from './history-buttons.tsx'
import { IconButton } from './icon-button.tsx'
import { OpenMore } from './frames/open-more.tsx'
import { openDialog } from './screen-store.ts'
import { TaskProgress } from './task-progress.tsx'
import { useSession, useWorkbench } from './workbench-context.tsx'

export function TopBar() {
  const workbench = useWorkbench()
  const position = useSession((session) => session.entries.findIndex((entry) => entry.id === session.shownId) + 1)
  const count = useSession((session) => session.entries.length)
  const canExport = useSession((session) => session.shown !== null)

  return (
    <header className="top-bar">
      <h1 className="name">Rimeleaf</h1>
      <OpenMore />
      <Group className="frame-steps" aria-label="Frame">
        <IconButton label="Previous frame" isDisabled={position <= 1} onPress={() => workbench.showNeighbour(-1)}>
          <ChevronLeft />
        </IconButton>
        <FrameList position={position} count={count} />
        <IconButton label="Next frame" isDisabled={position >= count} onPress={() => workbench.showNeighbour(1)}>
          <ChevronRight />
        </IconButton>
      </Group>
      <FilterStatement />
      <EditMenu />
      <span className="spring" />
      <TaskProgress />
      <HistoryButtons />
      <IconButton label="Help and keys" onPress={() => openDialog('help')}>
        <CircleHelp />
      </IconButton>
      <Button className="button" isDisabled={!canExport} onPress={() => openDialog('export')}>
        Export
      </Button>
    </header>
  )
}
