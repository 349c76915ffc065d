// What stands there before any frame is open: what this is, and the ways in.
import { Button } from 'react-aria-components/Button'

import { OpenDemoButton, OpenFilesButton } from '../frames/open-files.tsx'
import { openDialog } from '../screen-store.ts'
import { WavelengthRule } from './wavelength-rule.tsx'

export function StartScreen() {
  return (
    <main className="start">
      <div className="start-words">
        <h1>Rimeleaf</h1>
        <p className="start-line">
          A workbench for photographs from infrared- and full-spectrum-converted cameras: choose what is neutral and see
          the finished picture while you choose.
        </p>
        <div className="start-ways">
          <OpenFilesButton className="button prime">Open photographs…</OpenFilesButton>
          <OpenFilesButton className="button" folder>
            Open a folder…
          </OpenFilesButton>
          <OpenDemoButton className="button">Open the demo roll</OpenDemoButton>
        </div>
        <p className="start-note">Or drop files or a folder anywhere. Everything stays on this machine.</p>
      </div>
      <WavelengthRule />
      <footer className="start-foot">
        <span className="start-note">Cut-on wavelengths of common long-pass filters, in nm</span>
        <Button className="link" onPress={() => openDialog('help')}>
          Cautions, keys and what the probe is
        </Button>
      </footer>
    </main>
  )
}
