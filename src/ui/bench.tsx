// The bench: top line, chain, left column, picture, panel of the selected step, status line.
import { useNeutralPreview } from './board/neutral-preview.ts'
import { ChainRail } from './chain/chain-rail.tsx'
import { LeftColumn } from './left/left-column.tsx'
import { FoldSection } from './panel/fold-section.tsx'
import { FrameFactsPanel } from './panel/frame-facts.tsx'
import { Picture } from './picture/picture.tsx'
import { Histograms } from './readings/histogram-section.tsx'
import { PlaceReader } from './readings/place-colours.ts'
import { StatusLine } from './status-line.tsx'
import { StepPanel } from './panel/step-panel.tsx'
import { Trace } from './readings/trace-section.tsx'
import { TopBar } from './top-bar.tsx'
import { useChain } from './chain/selected-step.ts'
import { useSession } from './workbench-context.tsx'

export function Bench() {
  const hasFrame = useSession((session) => session.shown !== null)
  const hasChain = useChain().length > 0
  useNeutralPreview()
  return (
    <div className="bench">
      <TopBar />
      <PlaceReader />
      {hasChain && <ChainRail />}
      {hasFrame && <LeftColumn />}
      <main className="bench-main">
        <Picture />
      </main>
      {hasFrame && (
        <aside className="panel" aria-label="Selected step and frame">
          <StepPanel />
          <FoldSection id="histograms" title="Histograms">
            <Histograms />
          </FoldSection>
          <FoldSection id="trace" title="Trace">
            <Trace />
          </FoldSection>
          <FrameFactsPanel />
        </aside>
      )}
      <StatusLine />
    </div>
  )
}
