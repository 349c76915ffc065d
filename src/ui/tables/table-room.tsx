// Above the controls of a colour table step: which table it reads, where another comes from, and what is to be known of it.
import { TriangleAlert } from 'lucide-react'
import { useEffect } from 'react'
import { Button } from 'react-aria-components/Button'
import { FileTrigger } from 'react-aria-components/FileTrigger'

import { ChoiceList } from '../controls/choice-list.tsx'
import type { StepRoomProps } from '../panel/step-room-props.ts'
import { useSession, useWorkbench } from '../workbench-context.tsx'
import { tableWords } from './table-words.ts'

function LoadButton({ stepId }: { stepId: string }) {
  const workbench = useWorkbench()
  const load = (files: FileList | null) => {
    if (files?.[0]) void workbench.loadTable(files[0], stepId)
  }
  return (
    <FileTrigger acceptedFileTypes={['.cube', '.clf']} onSelect={load}>
      <Button className="button wide">Load a table…</Button>
    </FileTrigger>
  )
}

export function TableRoom({ step }: StepRoomProps) {
  const workbench = useWorkbench()
  const tables = useSession((session) => session.tables)
  useEffect(() => void workbench.recallTables(), [workbench])

  const tableId = String(step.values.table ?? '')
  const name = String(step.values.name ?? '')
  const used = tables.find(({ id }) => id === tableId)
  const isMissing = tableId !== '' && !used
  const options = tables.map(({ id, name: label }) => ({ value: id, label }))
  if (isMissing) options.unshift({ value: tableId, label: `${name} (missing)` })

  return (
    <div className="table-room">
      {options.length > 0 && (
        <ChoiceList
          label="Table"
          options={options}
          value={tableId}
          unchosen="none yet"
          onChange={(id) => workbench.chooseTable(step.id, id)}
        />
      )}
      <LoadButton stepId={step.id} />
      {isMissing && (
        <p className="control-warning">
          <TriangleAlert aria-hidden="true" />
          <span>
            <span className="visually-hidden">Warning: </span>
            The table “{name}” is not in this browser, so colour passes unchanged. Load its file, or an edit file that
            carries it.
          </span>
        </p>
      )}
      {tableId === '' && (
        <p className="control-note">
          Colour passes unchanged until a .cube or CLF file is loaded here or dropped on the page.
        </p>
      )}
      {used &&
        tableWords(used).map((line) => (
          <p key={line} className="control-note">
            {line}
          </p>
        ))}
    </div>
  )
}

/** Below the controls: a table that is not wanted any more can go. */
export function ForgetTable({ step }: StepRoomProps) {
  const workbench = useWorkbench()
  const used = useSession((session) => session.tables.find(({ id }) => id === step.values.table))
  if (!used) return null
  return (
    <Button className="link" onPress={() => void workbench.forgetTable(used.id)}>
      Forget this table
    </Button>
  )
}
