// One of the two picks of a second light: what it read, the probe to take it with, and the marks it can be taken from.
import { ChevronDown } from 'lucide-react'
import { Button } from 'react-aria-components/Button'
import { Menu, MenuItem, MenuTrigger } from 'react-aria-components/Menu'
import { Popover } from 'react-aria-components/Popover'

import { lightMarkOf } from '../../analysis/two-lights/light-marks.ts'
import type { PickedLight } from '../../edits/light-picks.ts'
import type { Marks } from '../../edits/marks.ts'
import { formatNumber } from '../../text/format-number.ts'
import { endProbe, startProbe } from '../picture/probe-tool.ts'
import { useSession, useShownEdit, useWorkbench } from '../workbench-context.tsx'

const noMarks: Marks = []

interface LightPickRowProps {
  readonly stepId: string
  readonly light: PickedLight
  readonly pick: readonly number[]
}

export function LightPickRow({ stepId, light, pick }: LightPickRowProps) {
  const workbench = useWorkbench()
  const active = useSession(({ probeTarget }) => probeTarget?.stepId === stepId && probeTarget.light === light)
  const marks = useShownEdit((edit) => edit?.marks ?? noMarks).filter((mark) => mark.place !== null)
  const mark = lightMarkOf(pick)
  const title = `In the ${light}`

  const probe = () => {
    if (active) return endProbe(workbench)
    startProbe(workbench, { stepId, light })
  }
  const takeMark = (markId: string) => {
    const place = marks.find(({ id }) => id === markId)?.place
    if (!place) return
    workbench.setProbeTarget({ stepId, light })
    workbench.roam(place)
    workbench.commitProbe()
    workbench.setTool('pan')
  }

  return (
    <div className="light-pick">
      <span className="control-label">{title}</span>
      <span className="light-pick-reading">
        {mark
          ? `red ${formatNumber(-mark[0], 2, true)}, blue ${formatNumber(-mark[1], 2, true)}`
          : 'nothing picked yet'}
      </span>
      <span className="light-pick-buttons">
        {marks.length > 0 && (
          <MenuTrigger>
            <Button className="icon-button" aria-label={`${title}: take a mark`}>
              <ChevronDown aria-hidden="true" />
            </Button>
            <Popover className="popover" placement="bottom end">
              <Menu className="list" aria-label="Mark to take" onAction={(key) => takeMark(String(key))}>
                {marks.map(({ id, name }) => (
                  <MenuItem key={id} id={id} className="list-item">
                    Mark {name}
                  </MenuItem>
                ))}
              </Menu>
            </Popover>
          </MenuTrigger>
        )}
        <Button className="button" aria-label={`${title}: pick`} aria-pressed={active} onPress={probe}>
          {active ? 'Picking' : mark ? 'Pick again' : 'Pick'}
        </Button>
      </span>
    </div>
  )
}
