// How the picture is seen: divided or not, whole, pixel for pixel, and the zoom as a number.
import { Button } from 'react-aria-components/Button'
import { Group } from 'react-aria-components/Group'
import { useStore } from 'zustand'

import { effectiveZoom } from '../../workbench/view-geometry.ts'
import { toggleDivide } from './divide-tool.ts'
import { showPixels, showWhole } from './picture-view.ts'
import { screen } from '../screen-store.ts'
import { useSession, useWorkbench } from '../workbench-context.tsx'

/** "38 %", with one decimal below 10 %. */
function zoomText(zoom: number): string {
  return `${(zoom * 100).toFixed(zoom < 0.1 ? 1 : 0)} %`
}

/** Device pixels per sensor pixel as seen now, or null while no frame is shown. */
function useShownZoom(): number | null {
  const view = useSession((session) => session.view)
  const shown = useSession((session) => session.shown)
  const size = useStore(screen, (state) => state.pictureSize)
  return shown && effectiveZoom(view, shown, { ...size, devicePixelRatio })
}

export function ZoomControls() {
  const workbench = useWorkbench()
  const fit = useSession((session) => session.view.fit)
  const zoom = useShownZoom()
  const isDisabled = useSession((session) => session.shown === null)
  const isDivided = useSession((session) => session.divide !== null)
  const isPixels = !fit && zoom === 1
  return (
    <Group className="zoom" aria-label="How the picture is seen">
      <Button
        className="button"
        aria-pressed={isDivided}
        isDisabled={isDisabled}
        onPress={() => toggleDivide(workbench)}
      >
        Divided
      </Button>
      <output className="zoom-number" aria-label="Zoom">
        {zoom === null ? '' : zoomText(zoom)}
      </output>
      <Button
        className="button"
        aria-pressed={fit && !isDisabled}
        isDisabled={isDisabled}
        onPress={() => showWhole(workbench)}
      >
        Whole
      </Button>
      <Button className="button" aria-pressed={isPixels} isDisabled={isDisabled} onPress={() => showPixels(workbench)}>
        1:1
      </Button>
    </Group>
  )
}
