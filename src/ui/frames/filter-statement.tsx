// Which filter the shown frame was taken through, as the photographer states it: it decides the treatment a frame opens with.
import { ChevronDown } from 'lucide-react'
import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { Dialog, DialogTrigger } from 'react-aria-components/Dialog'
import { ListBox, ListBoxItem } from 'react-aria-components/ListBox'
import { Popover } from 'react-aria-components/Popover'

import { commonCutOnsNm, filterWords, longestCutOnNm, shortestCutOnNm } from './cut-ons.ts'
import { NumberField } from '../controls/number-field.tsx'
import { useSession, useWorkbench } from '../workbench-context.tsx'

export function FilterStatement() {
  const workbench = useWorkbench()
  const shownId = useSession((session) => session.shownId)
  const stated = useSession((session) => session.entries.find((entry) => entry.id === session.shownId)?.statedFilterNm)
  const [isOpen, setOpen] = useState(false)
  if (shownId === null) return null

  const state = (filterNm: number | null) => {
    workbench.stateFilter(shownId, filterNm)
    setOpen(false)
  }
  const options = [null, ...commonCutOnsNm]

  return (
    <DialogTrigger isOpen={isOpen} onOpenChange={setOpen}>
      <Button className="button plain">
        {filterWords(stated)}
        <ChevronDown aria-hidden="true" />
      </Button>
      <Popover className="popover" placement="bottom start">
        <Dialog aria-label="Filter in front of the lens" className="filter-choice">
          <ListBox
            aria-label="Cut-on wavelength"
            // oxlint-disable-next-line jsx-a11y/no-autofocus -- the list is what the dialog was opened for
            autoFocus
            className="list filter-list"
            layout="grid"
            selectionMode="single"
            selectedKeys={stated === undefined ? [] : [String(stated)]}
            disallowEmptySelection={stated !== undefined}
            onSelectionChange={(keys) => {
              const [key] = keys
              state(key === 'null' ? null : Number(key))
            }}
          >
            {options.map((filterNm) => (
              <ListBoxItem key={String(filterNm)} id={String(filterNm)} className="list-item">
                {filterNm === null ? 'none, full spectrum' : `${filterNm} nm`}
              </ListBoxItem>
            ))}
          </ListBox>
          <div className="filter-other">
            <span>Another cut-on</span>
            <NumberField
              label="Another cut-on in nanometres"
              value={stated ?? null}
              decimals={0}
              step={5}
              min={shortestCutOnNm}
              max={longestCutOnNm}
              onCommit={(filterNm) => workbench.stateFilter(shownId, filterNm)}
            />
            <span className="unit">nm</span>
          </div>
        </Dialog>
      </Popover>
    </DialogTrigger>
  )
}
