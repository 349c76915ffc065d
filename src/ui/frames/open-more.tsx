// What the roll is, by name or number of files; behind it, more frames can be brought in.
import { ChevronDown } from 'lucide-react'
import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { Dialog, DialogTrigger } from 'react-aria-components/Dialog'
import { Popover } from 'react-aria-components/Popover'

import { useSession } from '../workbench-context.tsx'
import { OpenDemoButton, OpenFilesButton } from './open-files.tsx'

export function OpenMore() {
  const name = useSession((session) => session.rollName)
  const count = useSession((session) => session.entries.length)
  const onlyFile = useSession((session) => session.entries[0]?.fileName)
  const [isOpen, setOpen] = useState(false)
  // Not sooner: the chooser of files lives in the list and would go with it.
  const close = () => setOpen(false)
  return (
    <DialogTrigger isOpen={isOpen} onOpenChange={setOpen}>
      <Button className="button plain roll-name">
        <span className="roll-text">{name ?? (count === 1 ? onlyFile : `${count} files`)}</span>
        <ChevronDown aria-hidden="true" />
      </Button>
      <Popover className="popover" placement="bottom start">
        <Dialog aria-label="Roll" className="list">
          <OpenFilesButton className="list-item" onChosen={close}>
            Open photographs…
          </OpenFilesButton>
          <OpenFilesButton className="list-item" folder onChosen={close}>
            Open a folder…
          </OpenFilesButton>
          <OpenDemoButton className="list-item" onChosen={close}>
            Open the demo roll
          </OpenDemoButton>
        </Dialog>
      </Popover>
    </DialogTrigger>
  )
}
