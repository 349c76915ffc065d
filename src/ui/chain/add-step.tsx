// Adds any operation whose place is free.
import { Plus } from 'lucide-react'
import { Menu, MenuItem, MenuTrigger } from 'react-aria-components/Menu'
import { Popover } from 'react-aria-components/Popover'

import { operations } from '../../operations/index.ts'
import { IconButton } from '../icon-button.tsx'
import { useWorkbench } from '../workbench-context.tsx'

const addable = operations.filter((operation) => operation.place === 'free')

export function AddStep() {
  const workbench = useWorkbench()
  return (
    <MenuTrigger>
      <IconButton label="Add a step" className="add-step">
        <Plus />
      </IconButton>
      <Popover className="popover" placement="bottom start">
        <Menu className="list" aria-label="Step to add" onAction={(key) => workbench.addStep(String(key))}>
          {addable.map((operation) => (
            <MenuItem key={operation.id} id={operation.id} className="list-item">
              {operation.title}
            </MenuItem>
          ))}
        </Menu>
      </Popover>
    </MenuTrigger>
  )
}
