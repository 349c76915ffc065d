// The frames of the roll as a sheet that opens under the top line; each shows how it stands, a failed one says why.
import { ChevronDown } from 'lucide-react'
import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { Dialog, DialogTrigger } from 'react-aria-components/Dialog'
import { GridList } from 'react-aria-components/GridList'
import { Popover } from 'react-aria-components/Popover'

import { FrameCard } from './frame-card.tsx'
import { useSession, useWorkbench } from '../workbench-context.tsx'

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
