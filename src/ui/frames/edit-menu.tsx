// The edit of the shown frame as a whole: whether it is kept for the next time, and its ways to a file and back.
import { ChevronDown } from 'lucide-react'
import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { Dialog, DialogTrigger } from 'react-aria-components/Dialog'
import { FileTrigger } from 'react-aria-components/FileTrigger'
import { Popover } from 'react-aria-components/Popover'

import { isOpeningChain } from '../../edits/default-chain.ts'
import { openDialog } from '../screen-store.ts'
import { useSession, useShownEdit, useWorkbench } from '../workbench-context.tsx'

export function EditMenu() {
  const workbench = useWorkbench()
  const keepsEdits = useSession((session) => session.keepsEdits)
  const facts = useSession((session) => session.shown?.facts)
  const chain = useShownEdit((edit) => edit?.chain)
  const [isOpen, setOpen] = useState(false)
  if (!facts || !chain) return null

  // Not sooner: the chooser of files lives in the list and would go with it.
  const load = (files: FileList | null) => {
    setOpen(false)
    if (files?.[0]) void workbench.loadEdit(files[0])
  }
  const then = (act: () => unknown) => () => {
    setOpen(false)
    void act()
  }
  return (
    <DialogTrigger isOpen={isOpen} onOpenChange={setOpen}>
      <Button className="button plain">
        {keepsEdits ? 'edit kept' : 'edit not kept'}
        <ChevronDown aria-hidden="true" />
      </Button>
      <Popover className="popover" placement="bottom start">
        <Dialog aria-label="Edit of this frame" className="list">
          <Button className="list-item" onPress={then(workbench.saveEdit)}>
            Save as an edit file…
          </Button>
          <FileTrigger acceptedFileTypes={['.json']} onSelect={load}>
            <Button className="list-item">Load an edit file…</Button>
          </FileTrigger>
          <Button className="list-item" onPress={then(() => openDialog('table'))}>
            Save as a colour table…
          </Button>
          <Button className="list-item" isDisabled={isOpeningChain(chain, facts)} onPress={then(workbench.startAfresh)}>
            Back to the opening chain
          </Button>
        </Dialog>
      </Popover>
    </DialogTrigger>
  )
}
