// The bench: top line, chain, left column, picture, panel of the selected step, status line.
import { ChainRail } from './chain/chain-rail.tsx'
import { LeftColumn } from './left/left-column.tsx'
import { FrameFactsPanel } from './panel/frame-facts.tsx'
import { Picture } from './picture/picture.tsx'
import { StatusLine } from './status-line.tsx'
import { StepPanel } from './panel/step-panel.tsx'
import { TopBar } from './top-bar.tsx'
import { useChain } from './chain/selected-step.ts'
import { useSession } from './workbench-context.tsx'

export function Bench() {
  const hasFrame = useSession((session) => session.shown !== null)
  const hasChain = useChain().length > 0
  return (
    <div className="bench">
      <TopBar />
      {hasChain && <ChainRail />}
      {hasFrame && <LeftColumn />}
      <main className="bench-main">
        <Picture />
      </main>
      {hasFrame && (
        <aside className="panel" aria-label="Selected step and frame">
          <StepPanel />
          <FrameFactsPanel />
        </aside>
      )}
      <StatusLine />
    </div>
  )
}
