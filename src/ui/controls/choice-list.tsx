// One of a few options from a list that opens in place.
import { ChevronDown } from 'lucide-react'
import { Button } from 'react-aria-components/Button'
import { Label } from 'react-aria-components/Label'
import { ListBox, ListBoxItem } from 'react-aria-components/ListBox'
import { Popover } from 'react-aria-components/Popover'
import { Select, SelectValue } from 'react-aria-components/Select'

interface ChoiceListProps {
  readonly label: string
  readonly options: readonly { readonly value: string; readonly label: string }[]
  readonly value: string
  /** Said where no option is the value. */
  readonly unchosen?: string
  readonly onChange: (value: string) => void
}

export function ChoiceList({ label, options, value, unchosen, onChange }: ChoiceListProps) {
  return (
    <Select className="choice-row" placeholder={unchosen} value={value} onChange={(key) => onChange(String(key))}>
      <Label className="control-label">{label}</Label>
      <Button className="button choice-button">
        <SelectValue />
        <ChevronDown aria-hidden="true" />
      </Button>
      <Popover className="popover" placement="bottom end">
        <ListBox className="list">
          {options.map((option) => (
            <ListBoxItem key={option.value} id={option.value} className="list-item">
              {option.label}
            </ListBoxItem>
          ))}
        </ListBox>
      </Popover>
    </Select>
  )
}
