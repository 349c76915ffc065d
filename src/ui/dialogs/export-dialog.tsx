// What the shown frame leaves as: format, colour space, quality, whether the place stays in it, and the name it will have.
import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { Switch } from 'react-aria-components/Switch'

import type { SliderControl } from '../../operations/define.ts'
import type { ExportSettings } from '../../export/export-picture.ts'
import { ChoiceList } from '../controls/choice-list.tsx'
import { DialogFrame } from './dialog-frame.tsx'
import { exportedName } from '../../export/exported-name.ts'
import { NumberField } from '../controls/number-field.tsx'
import { ScaleSlider } from '../controls/scale-slider.tsx'
import { openDialog } from '../screen-store.ts'
import { useSession, useWorkbench } from '../workbench-context.tsx'

const formats: readonly { value: ExportSettings['format']; label: string }[] = [
  { value: 'tiff16', label: 'TIFF, 16 bit' },
  { value: 'tiff8', label: 'TIFF, 8 bit' },
  { value: 'jpeg', label: 'JPEG' },
]
const spaces: readonly { value: ExportSettings['space']; label: string }[] = [
  { value: 'srgb', label: 'sRGB' },
  { value: 'display-p3', label: 'Display P3' },
  { value: 'rec2020', label: 'Rec. 2020' },
  { value: 'romm', label: 'ROMM RGB' },
]
const qualityControl: SliderControl = {
  kind: 'slider',
  label: 'Quality',
  unit: '',
  min: 1,
  max: 100,
  step: 1,
  initial: 92,
  bounded: true,
}

export function ExportDialog() {
  const workbench = useWorkbench()
  const fileName = useSession((session) => session.shown?.fileName)
  const hasPlace = useSession((session) => session.shown?.metadata.gps !== undefined)
  const [request, setRequest] = useState<ExportSettings>({
    format: 'tiff16',
    space: 'srgb',
    quality: qualityControl.initial,
    keepLocation: false,
  })
  if (fileName === undefined) return null
  const change = (values: Partial<ExportSettings>) => setRequest((now) => ({ ...now, ...values }))
  const setQuality = (quality: unknown) => change({ quality: Number(quality) })

  return (
    <DialogFrame title="Export this frame" className="export">
      <ChoiceList
        label="Format"
        options={formats}
        value={request.format}
        onChange={(format) => change({ format: format as ExportSettings['format'] })}
      />
      <ChoiceList
        label="Colour space"
        options={spaces}
        value={request.space}
        onChange={(space) => change({ space: space as ExportSettings['space'] })}
      />
      {request.format === 'jpeg' && (
        <div className="slider-row">
          <span className="control-label">Quality</span>
          <span className="slider-number">
            <NumberField
              label="Quality, typed"
              value={request.quality}
              decimals={0}
              step={1}
              min={qualityControl.min}
              max={qualityControl.max}
              onCommit={setQuality}
            />
            <span className="unit" />
          </span>
          <ScaleSlider
            control={qualityControl}
            value={request.quality}
            gesture={{ change: setQuality, set: setQuality, end() {}, cancel() {} }}
          />
        </div>
      )}
      {hasPlace && (
        <Switch
          className="switch-row"
          isSelected={request.keepLocation}
          onChange={(keepLocation) => change({ keepLocation })}
        >
          <span className="control-label">Keep where it was taken</span>
          <span className="switch-state">{request.keepLocation ? 'kept' : 'left out'}</span>
          <span className="lamp" />
        </Switch>
      )}
      <footer className="dialog-foot">
        <span className="result-name">{exportedName(fileName, request.format)}</span>
        <Button
          className="button prime"
          onPress={() => {
            openDialog(null)
            void workbench.exportShown(request)
          }}
        >
          Export
        </Button>
      </footer>
    </DialogFrame>
  )
}
