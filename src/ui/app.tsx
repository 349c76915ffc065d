// The whole screen for one workbench.
import { useDeferredValue } from 'react'
import { useStore } from 'zustand'

import type { Workbench } from '../workbench/workbench.ts'
import { Bench } from './bench.tsx'
import { DropEverywhere } from './drop-everywhere.tsx'
import { TableDialog } from './dialogs/table-dialog.tsx'
import { ExportDialog } from './dialogs/export-dialog.tsx'
import { HelpDialog } from './dialogs/help-dialog.tsx'
import { InCameraDialog } from './in-camera/in-camera-dialog.tsx'
import { Notices } from './notices.tsx'
import { screen } from './screen-store.ts'
import { useShortcuts } from './shortcuts.ts'
import { StartScreen } from './start/start-screen.tsx'
import { useSession, WorkbenchProvider } from './workbench-context.tsx'
import './styles/tokens.css'
import './styles/bench.css'
import './styles/top-bar.css'
import './styles/foot-line.css'
import './styles/chain.css'
import './styles/left.css'
import './styles/board.css'
import './styles/picture.css'
import './styles/controls.css'
import './styles/sliders.css'
import './styles/progress.css'
import './styles/panel.css'
import './styles/mapping.css'
import './styles/maps.css'
import './styles/patches.css'
import './styles/readings.css'
import './styles/tones.css'
import './styles/plane.css'
import './styles/in-camera.css'
import './styles/overlays.css'
import './styles/frames.css'
import './styles/dialogs.css'
import './styles/start.css'
import './styles/lights.css'
import './styles/places.css'

function Screen() {
  useShortcuts()
  const dialog = useStore(screen, (state) => state.dialog)
  // The bench is much to put up at once: it is rendered in slices beside the start screen, which then gives way.
  const isEmpty = useDeferredValue(useSession((session) => session.entries.length === 0))
  return (
    <>
      {isEmpty ? <StartScreen /> : <Bench />}
      {dialog === 'help' && <HelpDialog />}
      {dialog === 'export' && <ExportDialog />}
      {dialog === 'table' && <TableDialog />}
      {dialog === 'in camera' && <InCameraDialog />}
      <Notices />
      <DropEverywhere />
    </>
  )
}

export function App({ workbench }: { workbench: Workbench }) {
  return (
    <WorkbenchProvider workbench={workbench}>
      <Screen />
    </WorkbenchProvider>
  )
}
