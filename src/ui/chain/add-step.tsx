// Adds any operation that the chain can take.
import { Plus } from 'lucide-react'
import { Menu, MenuItem, MenuTrigger } from 'react-aria-components/Menu'
import { Popover } from 'react-aria-components/Popover'

import { mayAdd } from '../../edits/stack.ts'
import { operations } from '../../operations/index.ts'
import { IconButton } from '../icon-button.tsx'
import { useChain } from './selected-step.ts'
import { useWorkbench } from '../workbench-context.tsx'

export function AddStep() {
  const workbench = useWorkbench()
  const chain = useChain()
  const addable = operations.filter((operation) => mayAdd(chain, operation))
  return (
    <MenuTrigger>
      <IconButton label="Add a step" className="add-step">
        <Plus />
      </IconButton>
      <Popover className="popover" placement="bottom start">
        {/* The menu goes in one turn and the step comes in the next, so that neither holds up the interface for long. */}
        <Menu
          className="list"
          aria-label="Step to add"
          onAction={(key) => setTimeout(() => workbench.addStep(String(key)))}
        >
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
