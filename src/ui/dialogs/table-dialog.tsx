// Steps of the shown frame's chain as a colour table for use elsewhere: which steps, which kind of file, and how true it is.
import { useMemo, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { Group } from 'react-aria-components/Group'
import { Switch } from 'react-aria-components/Switch'

import { OUTPUT_SPACES } from '../../colour/output-space.ts'
import { TABLE_ENCODINGS } from '../../colour/table-encoding.ts'
import { tableFileName, type TableFileSettings } from '../../export/table-file.ts'
import type { BakeStep } from '../../workbench/workbench.ts'
import { ChoiceList } from '../controls/choice-list.tsx'
import { openDialog } from '../screen-store.ts'
import { useSession, useShownEdit, useWorkbench } from '../workbench-context.tsx'
import { useBakedTable } from './baked-table.ts'
import { DialogFrame } from './dialog-frame.tsx'
import { AccuracyTable } from './table-accuracy.tsx'

const formats: readonly { value: TableFileSettings['format']; label: string }[] = [
  { value: 'cube', label: '.cube' },
  { value: 'clf', label: 'CLF' },
  { value: 'icc', label: 'ICC device link' },
]
const sizes = [17, 33, 65].map((size) => ({ value: String(size), label: String(size) }))
const encodings = Object.values(TABLE_ENCODINGS).map(({ id, title }) => ({ value: id, label: title }))
/** Those that pictures are kept in: an engine applies a device link to pictures. */
const pictureEncodings = encodings.filter(({ value }) => Object.hasOwn(OUTPUT_SPACES, value))

function StepSwitch({ step, isIn, onChange }: { step: BakeStep; isIn: boolean; onChange: (isIn: boolean) => void }) {
  return (
    <Switch className="switch-row" isDisabled={!step.mayLeave} isSelected={isIn} onChange={onChange}>
      <span className="control-label">{step.title}</span>
      <span className="switch-state">
        {step.mayLeave ? (isIn ? 'in it' : 'left out') : 'differs from place to place'}
      </span>
      <span className="lamp" />
    </Switch>
  )
}

/** What the file is like, in words. */
function fileWords({ format, encoding, stepIds }: TableFileSettings, steps: readonly BakeStep[]): string {
  if (format === 'cube') return `That is ${TABLE_ENCODINGS[encoding].description}.`
  if (format === 'icc')
    return `A profile that programs with a colour engine apply to a picture in ${TABLE_ENCODINGS[encoding].title}; what comes out is in ${TABLE_ENCODINGS[encoding].title} again. Colours outside it end at its edge.`
  const chosen = steps.filter(({ stepId }) => stepIds.includes(stepId))
  const sampled = chosen.filter(({ isExact }) => !isExact).map(({ title }) => title.toLowerCase())
  const exactly =
    sampled.length === 0
      ? 'Every step stands in it exactly.'
      : `Sampled behind the ACEScct curve: ${sampled.join(', ')}${sampled.length < chosen.length ? '; the rest stands in it exactly' : ''}.`
  return `It takes and gives ${TABLE_ENCODINGS.linear.description}. ${exactly}`
}

export function TableDialog() {
  const workbench = useWorkbench()
  const fileName = useSession((session) => session.shown?.fileName)
  const chain = useShownEdit((edit) => edit?.chain)
  // The chain cannot change behind a dialog but for another frame.
  const steps = useMemo(() => (chain ? workbench.bakeSteps() : []), [workbench, chain])
  const [settings, setSettings] = useState<TableFileSettings>(() => ({
    format: 'cube',
    size: 33,
    encoding: 'acescct',
    title: `Colours of ${(fileName ?? '').replace(/\.[^.]*$/, '')}`,
    stepIds: steps.filter((step) => step.mayLeave && step.isMapping).map(({ stepId }) => stepId),
  }))
  const baked = useBakedTable(settings)
  const change = (values: Partial<TableFileSettings>) => setSettings((now) => ({ ...now, ...values }))
  const choose = (format: TableFileSettings['format']) =>
    change({
      format,
      ...(format === 'icc' && !Object.hasOwn(OUTPUT_SPACES, settings.encoding) && { encoding: 'romm' }),
    })
  const put = (stepId: string, isIn: boolean) =>
    change({ stepIds: isIn ? [...settings.stepIds, stepId] : settings.stepIds.filter((id) => id !== stepId) })
  const isEmpty = settings.stepIds.length === 0
  const hasCube =
    settings.format !== 'clf' || steps.some(({ stepId, isExact }) => !isExact && settings.stepIds.includes(stepId))

  return (
    <DialogFrame title="Save as a colour table" className="table-dialog">
      <label className="text-row">
        <span className="control-label">Name</span>
        <input
          className="text-field"
          maxLength={80}
          autoComplete="off"
          value={settings.title}
          onChange={(event) => change({ title: event.currentTarget.value })}
        />
      </label>
      <div className="map-halves">
        <Group className="map-steps" aria-label="Steps">
          {steps.map((step) => (
            <StepSwitch
              key={step.stepId}
              step={step}
              isIn={settings.stepIds.includes(step.stepId)}
              onChange={(isIn) => put(step.stepId, isIn)}
            />
          ))}
          {isEmpty && (
            <p className="control-note">
              {steps.some(({ mayLeave }) => mayLeave)
                ? 'No step is in it yet: switch one in.'
                : 'The chain has no step between neutral and output that a colour table can hold.'}
            </p>
          )}
        </Group>
        <div className="map-kind">
          <ChoiceList
            label="File"
            options={formats}
            value={settings.format}
            onChange={(format) => choose(format as TableFileSettings['format'])}
          />
          {settings.format !== 'clf' && (
            <ChoiceList
              label="Takes and gives"
              options={settings.format === 'icc' ? pictureEncodings : encodings}
              value={settings.encoding}
              onChange={(encoding) => change({ encoding: encoding as TableFileSettings['encoding'] })}
            />
          )}
          {hasCube && (
            <ChoiceList
              label="Points a side"
              options={sizes}
              value={String(settings.size)}
              onChange={(size) => change({ size: Number(size) as TableFileSettings['size'] })}
            />
          )}
          <p className="control-note">{fileWords(settings, steps)}</p>
        </div>
      </div>
      <AccuracyTable baked={baked} />
      <footer className="dialog-foot">
        <span className="result-name">{tableFileName(settings)}</span>
        <Button
          className="button prime"
          isDisabled={baked.state !== 'done' || isEmpty}
          onPress={() => {
            if (baked.state !== 'done') return
            openDialog(null)
            void workbench.saveTable(baked.settings, baked.file)
          }}
        >
          Save
        </Button>
      </footer>
    </DialogFrame>
  )
}
