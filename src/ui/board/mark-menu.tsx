// What can be done with a mark besides looking at it, for every kind of hand.
import { Ellipsis } from 'lucide-react'
import { Button } from 'react-aria-components/Button'
import { Menu, MenuItem, MenuTrigger } from 'react-aria-components/Menu'
import { Popover } from 'react-aria-components/Popover'

interface MarkAction {
  readonly id: string
  readonly label: string
  readonly isDisabled?: boolean
  readonly act: () => void
}

interface MarkMenuProps {
  readonly label: string
  readonly actions: readonly MarkAction[]
  readonly tabIndex: number
}

export function MarkMenu({ label, actions, tabIndex }: MarkMenuProps) {
  const disabled = actions.filter(({ isDisabled }) => isDisabled).map(({ id }) => id)
  return (
    <MenuTrigger>
      <Button className="icon-button mark-more" aria-label={label} excludeFromTabOrder={tabIndex < 0}>
        <Ellipsis />
      </Button>
      <Popover className="popover" placement="bottom start">
        <Menu
          className="list"
          aria-label={label}
          disabledKeys={disabled}
          onAction={(key) => actions.find(({ id }) => id === key)?.act()}
        >
          {actions.map(({ id, label: text }) => (
            <MenuItem key={id} id={id} className="list-item">
              {text}
            </MenuItem>
          ))}
        </Menu>
      </Popover>
    </MenuTrigger>
  )
}
