// Opens the screen over a workbench in memory, for the tests of the screen.
import axe from 'axe-core'
import { expect } from 'vitest'
import { page, userEvent } from 'vitest/browser'
import { render } from 'vitest-browser-react'

import { App } from '../../src/ui/app.tsx'
import { openDialog } from '../../src/ui/screen-store.ts'
import { createFakeWorkbench, smallRoll } from './fake-workbench.ts'

export const key = (keys: string) => userEvent.keyboard(keys)

/** Presses N and lets it go `heldMs` later by the events' own clock, however slow the machine is. */
export function pressProbeKey(heldMs: number): void {
  for (const [type, timeStamp] of [
    ['keydown', 0],
    ['keyup', heldMs],
  ] as const) {
    const event = new KeyboardEvent(type, { key: 'n', bubbles: true, cancelable: true })
    Object.defineProperty(event, 'timeStamp', { value: timeStamp })
    const target = document.activeElement ?? document.body
    target.dispatchEvent(event)
  }
}

/** Rules broken on the page now, or in what a selector names; WCAG 2.0 to 2.2 at A and AA, as the axe-core rules have them. */
export async function brokenRules(within?: string): Promise<string[]> {
  const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']
  const { violations } = await axe.run(within ?? document, { runOnly: { type: 'tag', values: tags } })
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html.slice(0, 120)).join(' | ')}`)
}

/** The start screen at 1280×720. */
export async function openScreen() {
  await page.viewport(1280, 720)
  openDialog(null)
  const workbench = createFakeWorkbench(smallRoll())
  await render(<App workbench={workbench} />)
  return {
    workbench,
    callsOf: (...names: string[]) => workbench.calls.filter(([name]) => names.includes(name)),
    chainIds: () => workbench.edit.getState().shown!.chain.map((step) => step.operation),
    stepOf: (operation: string) => workbench.edit.getState().shown!.chain.find((step) => step.operation === operation)!,
  }
}

/** The bench with the small roll, its first frame shown and no command counted yet. */
export async function openBench() {
  const bench = await openScreen()
  await bench.workbench.openDemoRoll()
  await expect.element(page.getByRole('heading', { name: 'Neutral' })).toBeVisible()
  bench.workbench.calls.length = 0
  return bench
}
