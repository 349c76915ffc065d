// Taking the probe up and putting it away, the same for button, key and touch.
import type { LightTarget } from '../../edits/light-picks.ts'
import { neutralGains } from '../../edits/stack.ts'
import type { Workbench } from '../../workbench/workbench.ts'
import { pictureArea } from './picture-place.ts'
import { screen } from '../screen-store.ts'

/** A ring starts under the pointer, or in the middle of what is seen where there is none; `target` as `setProbeTarget` has it. */
export function startProbe(workbench: Workbench, target: LightTarget | null = null): void {
  const { view } = workbench.session.getState()
  workbench.setTool('probe')
  workbench.setProbeTarget(target)
  workbench.roam(screen.getState().pointer ?? (view.fit ? { x: 0.5, y: 0.5 } : view.centre))
  pictureArea()?.focus({ preventScroll: true })
}

export function endProbe(workbench: Workbench): void {
  workbench.setTool('pan')
}

/** Makes what is under the probe the frame's neutral, or its pick, and puts it away, so that the picture stays so; without a neutral nothing happens. */
export function makeNeutral(workbench: Workbench): void {
  if (!workbench.session.getState().probe?.neutral) return
  workbench.commitProbe()
  workbench.setTool('pan')
}

/** Keeps the neutral under the probe as a mark and goes on probing; without a probe, the frame's own neutral. */
export function keepMark(workbench: Workbench): void {
  const { probe, tool } = workbench.session.getState()
  if (probe) return workbench.markProbe()
  if (tool === 'probe') return
  const gains = neutralGains(workbench.edit.getState().shown?.chain ?? [])
  if (gains) workbench.addMark(gains, null)
}

/** Puts the tool away and leaves everything as it was before it was taken up. */
export function leaveTool(workbench: Workbench): void {
  workbench.escape()
  workbench.setTool('pan')
}
