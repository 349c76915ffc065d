// Keys on the picture: arrows roam with the probe or move the picture, Enter makes the place neutral, with shift a mark, Escape
// leaves all as it was.
import type { KeyboardEvent, RefObject } from 'react'

import {
  canCloseOutline,
  closeOutline,
  dropOutline,
  isOutlining,
  moveCorner,
  setCorner,
  takeBackCorner,
} from './outline-tool.ts'
import { bringIntoWindow, panBy, placeBeside } from './picture-place.ts'
import { keepMark, makeNeutral, leaveTool } from './probe-tool.ts'
import { screen } from '../screen-store.ts'
import { useWorkbench } from '../workbench-context.tsx'

/** CSS pixels of one arrow press: small steps, with shift large ones; moving the picture takes larger ones (our choice). */
const roamPx = { plain: 4, shift: 40 }
const panPx = { plain: 60, shift: 240 }

const directions: Record<string, readonly [number, number]> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
}

export function usePictureKeys(area: RefObject<HTMLDivElement | null>) {
  const workbench = useWorkbench()

  const travel = ([dx, dy]: readonly [number, number], shift: boolean) => {
    const { tool, probe, view } = workbench.session.getState()
    if (tool === 'pan') {
      const px = shift ? panPx.shift : panPx.plain
      panBy(workbench, area.current!, -dx * px, -dy * px)
      return
    }
    const px = shift ? roamPx.shift : roamPx.plain
    const from = probe?.place ?? (view.fit ? { x: 0.5, y: 0.5 } : view.centre)
    const to = probe ? placeBeside(workbench, from, dx * px, dy * px) : from
    bringIntoWindow(workbench, area.current!, to)
    workbench.roam(to)
  }

  /** Keys that draw an outline; false where the key means what it means otherwise. */
  const draw = ({ key, shiftKey }: KeyboardEvent): boolean => {
    if (!isOutlining(workbench)) return false
    const px = shiftKey ? roamPx.shift : roamPx.plain
    const isDrawing = screen.getState().outline !== null
    if (directions[key]) {
      const [dx, dy] = directions[key]
      bringIntoWindow(workbench, area.current!, moveCorner(workbench, dx * px, dy * px))
    } else if (key === ' ') setCorner(workbench)
    else if (key === 'Backspace') takeBackCorner()
    else if (key === 'Enter' && canCloseOutline()) closeOutline(workbench)
    else if (key === 'Escape' && isDrawing) dropOutline()
    else return false
    return true
  }

  return {
    onKeyDown(event: KeyboardEvent) {
      const { tool } = workbench.session.getState()
      if (event.ctrlKey || event.metaKey || event.altKey || event.target !== area.current) return
      if (draw(event)) {
        event.preventDefault()
        event.stopPropagation()
        return
      }
      if (directions[event.key]) travel(directions[event.key], event.shiftKey)
      else if (event.key === 'Enter' && tool === 'probe' && event.shiftKey) keepMark(workbench)
      else if (event.key === 'Enter' && tool === 'probe') makeNeutral(workbench)
      else if (event.key === 'Escape' && tool === 'probe') leaveTool(workbench)
      else return
      event.preventDefault()
      event.stopPropagation()
    },
  }
}
