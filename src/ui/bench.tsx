// The bench: top line, chain, left column, picture, panel of the selected step, status line. All have their place from the
// start, so that the picture's never changes while frames come and go.
import { memo } from 'react'

import { useNeutralPreview } from './board/neutral-preview.ts'
import { ChainRail } from './chain/chain-rail.tsx'
import { LeftColumn } from './left/left-column.tsx'
import { OfFrame, type ToldFrame, useToldFrame } from './of-frame.tsx'
import { FoldSection } from './panel/fold-section.tsx'
import { FrameFactsPanel } from './panel/frame-facts.tsx'
import { Picture } from './picture/picture.tsx'
import { Histograms } from './readings/histogram-section.tsx'
import { PlaceReader } from './readings/place-colours.ts'
import { StatusLine } from './status-line.tsx'
import { StepPanel } from './panel/step-panel.tsx'
import { Trace } from './readings/trace-section.tsx'
import { TopBar } from './top-bar.tsx'

/** Beside the picture before it in the order of reading, and after it. */
const ChainAndLeft = memo(function ChainAndLeft({ told }: { told: ToldFrame }) {
  return (
    <OfFrame told={told}>
      <PlaceReader />
      <ChainRail />
      <LeftColumn roomKey={told.frameId} />
    </OfFrame>
  )
})

const Panel = memo(function Panel({ told }: { told: ToldFrame }) {
  return (
    <OfFrame told={told}>
      <aside className="panel" aria-label="Selected step and frame">
        {told.frameId !== null && (
          <>
            <StepPanel key={told.frameId} />
            <FoldSection id="histograms" title="Histograms">
              <Histograms />
            </FoldSection>
            <FoldSection id="trace" title="Trace">
              <Trace />
            </FoldSection>
            <FrameFactsPanel />
          </>
        )}
      </aside>
    </OfFrame>
  )
})

export function Bench() {
  const told = useToldFrame()
  useNeutralPreview()
  return (
    <div className="bench">
      <TopBar />
      <ChainAndLeft told={told} />
      <main className="bench-main">
        <Picture />
      </main>
      <Panel told={told} />
      <StatusLine />
    </div>
  )
}
