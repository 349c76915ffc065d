// The frames of the roll as a sheet that opens under the top line; each shows how it stands, a failed one says why.
import { ChevronDown, TriangleAlert } from 'lucide-react'
import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { Dialog, DialogTrigger } from 'react-aria-components/Dialog'
import { GridList, GridListItem } from 'react-aria-components/GridList'
import { Popover } from 'react-aria-components/Popover'

import type { RollEntry } from '../../workbench/session.ts'
import { FrameProgress } from './frame-progress.tsx'
import { useSession, useWorkbench } from '../workbench-context.tsx'

function FrameCard({ entry, position, isShown }: { entry: RollEntry; position: number; isShown: boolean }) {
  const { state, statedFilterNm: filterNm } = entry
  return (
    <GridListItem
      id={entry.id}
      textValue={`Frame ${position}, ${entry.fileName}${isShown ? ', shown' : ''}`}
      className="frame-card"
      data-shown={isShown || undefined}
    >
      <span className="frame-picture">
        {entry.pictureUrl && <img src={entry.pictureUrl} alt="" draggable={false} />}
        {state.kind === 'failed' && <TriangleAlert aria-hidden="true" />}
      </span>
      <span className="frame-line">
        <span className="frame-number">{position}</span>
        <span className="frame-name">{entry.fileName}</span>
        <span className="frame-filter">
          {filterNm !== undefined && (filterNm === null ? 'full spectrum' : `${filterNm} nm`)}
        </span>
      </span>
      {state.kind === 'failed' ? <span className="frame-reason">{state.reason}</span> : <FrameProgress entry={entry} />}
    </GridListItem>
  )
}

export function FrameList({ position, count }: { position: number; count: number }) {
  const workbench = useWorkbench()
  const entries = useSession((session) => session.entries)
  const shownId = useSession((session) => session.shownId)
  const [isOpen, setOpen] = useState(false)
  const show = (id: string) => {
    setOpen(false)
    void workbench.showFrame(id)
  }

  return (
    <DialogTrigger isOpen={isOpen} onOpenChange={setOpen}>
      <Button className="button plain">
        frame {position} of {count}
        <ChevronDown aria-hidden="true" />
      </Button>
      <Popover className="popover frame-sheet" placement="bottom start" crossOffset={-40}>
        <Dialog aria-label="Frames of the roll">
          <GridList aria-label="Frames" layout="grid" className="frame-grid" onAction={(key) => show(String(key))}>
            {entries.map((entry, index) => (
              <FrameCard key={entry.id} entry={entry} position={index + 1} isShown={entry.id === shownId} />
            ))}
          </GridList>
        </Dialog>
      </Popover>
    </DialogTrigger>
  )
}
