// Steps of the shown frame's chain as a colour table for use elsewhere: which steps, which kind of file, and how true it is.
import { useMemo, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { Group } from 'react-aria-components/Group'
import { Switch } from 'react-aria-components/Switch'

import { TABLE_ENCODINGS, type TableEncodingId } from '../../colour/table-encoding.ts'
import { encodingsOf } from '../../export/nearest-encoding.ts'
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
const encodings = (format: 'cube' | 'icc') => [
  { value: 'nearest', label: 'Nearest' },
  ...encodingsOf(format).map((id) => ({ value: id, label: TABLE_ENCODINGS[id].title })),
]

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

/** What the numbers of a `.cube` or device link are; null while the nearest encoding is still looked for. */
function encodingWords({ format, encoding }: TableFileSettings, found: TableEncodingId | null): string {
  if (found === null) return 'Which encoding comes nearest to the chain is being measured.'
  const { title, description } = TABLE_ENCODINGS[found]
  const words =
    format === 'icc'
      ? `A profile that programs with a colour engine apply to a picture in ${title}; what comes out is in ${title} again. Colours outside it end at its edge.`
      : `That is ${description}.`
  if (encoding !== 'nearest') return words
  return `${words} Of all encodings that hold this frame’s colours it comes nearest to the chain.`
}

/** What a CLF file is like, in words. */
function exactWords({ stepIds }: TableFileSettings, steps: readonly BakeStep[]): string {
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
    encoding: 'nearest',
    title: `Colours of ${(fileName ?? '').replace(/\.[^.]*$/, '')}`,
    stepIds: steps.filter((step) => step.mayLeave && step.isMapping).map(({ stepId }) => stepId),
  }))
  const baked = useBakedTable(settings)
  const change = (values: Partial<TableFileSettings>) => setSettings((now) => ({ ...now, ...values }))
  const choose = (format: TableFileSettings['format']) => {
    const keeps = format !== 'icc' || encodingsOf(format).some((id) => id === settings.encoding)
    change({ format, ...(!keeps && { encoding: 'nearest' }) })
  }
  const foundEncoding = baked.state === 'done' ? baked.file.encoding : null
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
              options={encodings(settings.format)}
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
          <p className="control-note">
            {settings.format === 'clf'
              ? exactWords(settings, steps)
              : encodingWords(settings, settings.encoding === 'nearest' ? foundEncoding : settings.encoding)}
          </p>
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
