// Help for those who have to set the neutral before they shoot: what to fill the frame with, and what this roll came to.
import { useState } from 'react'

import { ChoiceList } from '../controls/choice-list.tsx'
import { DialogFrame } from '../dialogs/dialog-frame.tsx'
import { commonCutOnsNm } from '../frames/cut-ons.ts'
import { useSession } from '../workbench-context.tsx'
import { type Light, whatToFrame, whenAgain } from './advice.ts'
import { RollTable } from './roll-table.tsx'
import { SubjectList } from './subject-list.tsx'
import { colourlessFromNm } from './subjects.ts'

/** Filter that is shown where the frame on the bench states none. */
const usualNm = 720

const lights: readonly { value: Light; label: string }[] = [
  { value: 'sun', label: 'sun' },
  { value: 'overcast', label: 'overcast' },
  { value: 'shade', label: 'open shade' },
]

/** A cut-on as the key of a choice, and back; full spectrum is `none`. */
const keyOf = (filterNm: number | null) => (filterNm === null ? 'none' : String(filterNm))

export function InCameraDialog() {
  const stated = useSession((session) => session.entries.find(({ id }) => id === session.shownId)?.statedFilterNm)
  const [filterNm, setFilterNm] = useState<number | null>(stated === undefined ? usualNm : stated)
  const [light, setLight] = useState<Light>('sun')
  const offered = [...new Set([null, ...commonCutOnsNm, filterNm])].sort((a, b) => (a ?? 0) - (b ?? 0))

  return (
    <DialogFrame title="Neutral in camera" className="in-camera">
      <section>
        <p>
          Where a camera has to be set before the picture is taken, fill the frame with one evenly lit thing and let the
          camera measure it. Its own automatic and its kelvin scale end long before the values that infrared needs.
        </p>
        <div className="in-camera-choices">
          <ChoiceList
            label="Filter"
            options={offered.map((each) => ({
              value: keyOf(each),
              label: each === null ? 'none, full spectrum' : `${each} nm`,
            }))}
            value={keyOf(filterNm)}
            onChange={(key) => setFilterNm(key === 'none' ? null : Number(key))}
          />
          <ChoiceList label="Light" options={lights} value={light} onChange={(key) => setLight(key as Light)} />
        </div>
        {stated === undefined && filterNm === usualNm && (
          <p className="control-note">No filter is stated for this frame: {usualNm} nm is assumed until you choose.</p>
        )}
      </section>
      <section aria-live="polite">
        <h3>Fill the frame with</h3>
        <p className="in-camera-advice">{whatToFrame(filterNm, light)}</p>
        <p>{whenAgain(filterNm, light)}</p>
      </section>
      <p className="control-warning">
        Keep the sun and its reflections out of the frame. Looking at or focusing on it through an infrared filter or an
        optical finder can injure the eye; filters that look dark do not protect it.
      </p>
      {filterNm !== null && filterNm < colourlessFromNm && <SubjectList filterNm={filterNm} light={light} />}
      <section>
        <h3>What this roll came to</h3>
        <p>
          The ratios of the sensor that each frame shows as neutral, in stops. A setting measured in camera should come
          near to them.
        </p>
        <RollTable />
      </section>
    </DialogFrame>
  )
}
