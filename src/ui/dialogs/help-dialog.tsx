// The help page: what the probe is, the cautions of the trade, what is kept, the keys, and what this machine cannot do.
import { Button } from 'react-aria-components/Button'
import { Switch } from 'react-aria-components/Switch'
import { useStore } from 'zustand'

import { DialogFrame } from './dialog-frame.tsx'
import { KeptSection } from './kept-section.tsx'
import { openDialog, screen, setSingleKeys } from '../screen-store.ts'
import { otherKeys, singleKeys } from '../shortcuts.ts'
import { useSession } from '../workbench-context.tsx'

function KeyList({ rows }: { rows: readonly (readonly [string, string])[] }) {
  return (
    <dl className="keys">
      {rows.map(([keys, does]) => (
        <div key={keys}>
          <dt>{keys}</dt>
          <dd>{does}</dd>
        </div>
      ))}
    </dl>
  )
}

export function HelpDialog() {
  const keysOn = useStore(screen, (state) => state.singleKeys)
  const graphicsLimit = useSession((session) => session.graphicsLimit)
  return (
    <DialogFrame title="Help and keys" className="help">
      <section>
        <h3>The probe</h3>
        <p>
          Behind an infrared filter no neutral is the right one: whatever you declare neutral decides where every other
          colour goes. The probe shows what would become of the whole picture if the place under it were neutral. Roam
          with it, and click where the picture pleases you. The line under the picture says how far the sample can be
          trusted: how much of it is clipped, how dark it is, and how sure the neutral is.
        </p>
        <p>
          A camera that writes only JPEG files has to be set before the picture is taken:{' '}
          <Button className="link" onPress={() => openDialog('in camera')}>
            Neutral in camera
          </Button>
        </p>
      </section>
      <section>
        <h3>Cautions</h3>
        <p>
          Looking at or focusing on the sun through an infrared filter or an optical finder can injure the eye; filters
          that look dark do not protect it.
        </p>
        <p>Converting a camera opens flash capacitors at dangerous voltage: leave it to a qualified repairer.</p>
        <p>
          Infrared can see through some fabrics and under the surface of skin: respect people’s privacy and local law.
        </p>
      </section>
      <KeptSection />
      <section>
        <h3>Keys</h3>
        <KeyList rows={otherKeys} />
        <Switch className="switch-row" isSelected={keysOn} onChange={setSingleKeys}>
          <span className="control-label">Single keys act</span>
          <span className="switch-state">{keysOn ? 'on' : 'off'}</span>
          <span className="lamp" />
        </Switch>
        <KeyList rows={singleKeys.map(({ key, does }) => [key, does] as const)} />
      </section>
      {graphicsLimit && (
        <section>
          <h3>This machine</h3>
          <p>{graphicsLimit}</p>
        </section>
      )}
    </DialogFrame>
  )
}
