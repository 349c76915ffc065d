// The keys of the bench in one table: what the help lists is what the page obeys.
import { useEffect } from 'react'

import type { Workbench } from '../workbench/workbench.ts'
import { toggleDivide } from './picture/divide-tool.ts'
import { toggleSampleWay } from './picture/outline-tool.ts'
import { showPixels, showWhole, zoomByNotch } from './picture/picture-view.ts'
import { endProbe, keepMark, leaveTool, startProbe } from './picture/probe-tool.ts'
import { stepSampleRadius } from './picture/sample-radius.ts'
import { markNextClipping } from './readings/clipping-tool.ts'
import { openDialog, screen } from './screen-store.ts'
import { useWorkbench } from './workbench-context.tsx'

interface SingleKey {
  readonly key: string
  readonly does: string
  readonly run: (workbench: Workbench) => void
}

export const singleKeys: readonly SingleKey[] = [
  { key: 'M', does: 'Keep a mark: of the place under the probe, else of the frame’s neutral', run: keepMark },
  { key: 'O', does: 'Probe an outline drawn by hand: takes the probe up; again for the ring', run: toggleSampleWay },
  { key: ',', does: 'Smaller sample', run: (workbench) => stepSampleRadius(workbench, -1) },
  { key: '.', does: 'Larger sample', run: (workbench) => stepSampleRadius(workbench, 1) },
  { key: 'D', does: 'Divide the picture: as it is, and with the probe or what is pointed at', run: toggleDivide },
  { key: 'W', does: 'The whole picture', run: showWhole },
  { key: 'S', does: 'Sensor pixel for screen pixel (1:1)', run: showPixels },
  { key: '+', does: 'Closer', run: (workbench) => zoomByNotch(workbench, 1) },
  { key: '-', does: 'Further away', run: (workbench) => zoomByNotch(workbench, -1) },
  { key: 'L', does: 'Mark what is lost: in the sensor, in the output, nothing', run: markNextClipping },
  { key: '?', does: 'This page', run: () => openDialog('help') },
]

/** Keys that work only where the focus is, or with a modifier; for the help page. */
export const otherKeys: readonly (readonly [keys: string, does: string])[] = [
  ['N held', 'Probe for a neutral while held; a tap takes the probe up or puts it away'],
  ['Arrows on the picture', 'Roam with the probe, or move the picture; with shift in large steps'],
  ['Enter, shift + Enter', 'Make the place under the probe neutral, or keep it as a mark; clicks do the same'],
  [
    'Arrows, space, Enter',
    'While the probe takes an outline: move the cursor, set a corner, close; Backspace takes one back',
  ],
  ['Arrows, Enter, comma, full stop', 'While the brush is out: move it, dab, narrower, wider; Escape puts it away'],
  [
    'Arrows on a point in the picture',
    'Move the end of a passage or the edge of a round area; with shift in large steps',
  ],
  ['Escape', 'Put probe, brush or picker away and leave all as it was'],
  ['Page up, Page down', 'Previous and next frame'],
  ['Wheel, shift + wheel', 'Zoom about the pointer; size of the sample'],
  ['Arrows, Page, Home, End on a slider', 'Move it; with shift finely; Delete resets'],
  ['Up, down on a mark', 'Go through the board; with shift move the mark'],
  ['Enter, F2, Delete on a mark', 'Make it neutral, rename it, remove it'],
  ['Up, down, Enter on a colour map', 'Go along the shelf, each shown in the picture; lay the map on the frame'],
  ['Arrows on an end of a hue band', 'Move its hue, or what becomes of it; with shift finely; Delete resets'],
  ['Arrows on a point of the curve', 'Move it; Insert or Enter adds one beside it, Delete takes it away'],
  ['Arrows on a point of the plane', 'Move it; with shift finely; Enter makes a mark neutral'],
  ['Arrows, plus, minus, Home on the plane', 'Move it, zoom, show all points'],
  ['Shift + arrows on a step', 'Move the step along the chain; Delete removes it'],
  ['Ctrl or ⌘ + Z, with shift', 'Undo, redo'],
]

/** Longest press of N that counts as a tap, in ms (our choice). */
const tapMs = 350

/** Where keys belong to what is typed or chosen; a switch takes none but space. */
const takers = 'input:not([type=checkbox]), textarea, [role=dialog], [role=listbox], [role=menu]'
const isTaken = (target: EventTarget | null) => target instanceof Element && target.closest(takers) !== null

export function useShortcuts(): void {
  const workbench = useWorkbench()
  useEffect(() => {
    let nPress: { at: number; wasProbing: boolean } | null = null

    const press = (event: KeyboardEvent) => {
      const { dialog, singleKeys: keysOn } = screen.getState()
      const { tool, shown } = workbench.session.getState()
      if (event.defaultPrevented || dialog || isTaken(event.target) || event.altKey) return
      const key = event.key.toLowerCase()
      if (event.ctrlKey || event.metaKey) {
        if (key !== 'z') return
        event.preventDefault()
        if (event.shiftKey) workbench.redo()
        else workbench.undo()
      } else if (key === 'pageup') void workbench.showNeighbour(-1)
      else if (key === 'pagedown') void workbench.showNeighbour(1)
      else if (key === 'escape' && tool !== 'pan') leaveTool(workbench)
      else if (!keysOn) return
      else if (key === 'n' && shown && !event.repeat) {
        nPress = { at: event.timeStamp, wasProbing: tool === 'probe' }
        if (tool !== 'probe') startProbe(workbench)
      } else if (shown || key === '?') {
        singleKeys.find((single) => single.key.toLowerCase() === key)?.run(workbench)
      }
    }
    const release = (event: KeyboardEvent) => {
      if (!nPress || event.key.toLowerCase() !== 'n') return
      const tapped = event.timeStamp - nPress.at < tapMs
      if (!tapped || nPress.wasProbing) endProbe(workbench)
      nPress = null
    }

    addEventListener('keydown', press)
    addEventListener('keyup', release)
    return () => {
      removeEventListener('keydown', press)
      removeEventListener('keyup', release)
    }
  }, [workbench])
}
