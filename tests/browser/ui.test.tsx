// The screen against a workbench in memory: what hands do must arrive as commands, and what eyes and readers get must hold up.
import axe from 'axe-core'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { page, userEvent } from 'vitest/browser'
import { render } from 'vitest-browser-react'

import { App } from '../../src/ui/app.tsx'
import { openDialog } from '../../src/ui/screen-store.ts'
import { createFakeWorkbench, smallRoll, type FakeWorkbench } from '../support/fake-workbench.ts'

let workbench: FakeWorkbench

const callsOf = (...names: string[]) => workbench.calls.filter(([name]) => names.includes(name))
const chainIds = () => workbench.edit.getState().shown!.chain.map((step) => step.operation)
const stepOf = (operation: string) =>
  workbench.edit.getState().shown!.chain.find((step) => step.operation === operation)!
const area = () => page.getByRole('application', { name: /^Picture of/ })
const key = (keys: string) => userEvent.keyboard(keys)

/** Rules broken on the page now; WCAG 2.0 to 2.2 at A and AA, as the axe-core rules implement them. */
async function brokenRules(): Promise<string[]> {
  const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']
  const { violations } = await axe.run(document, { runOnly: { type: 'tag', values: tags } })
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html.slice(0, 120)).join(' | ')}`)
}

async function openBench() {
  await render(<App workbench={workbench} />)
  await page.getByRole('button', { name: 'Open the demo roll' }).click()
  await expect.element(page.getByRole('heading', { name: 'Neutral' })).toBeVisible()
  workbench.calls.length = 0
}

beforeEach(async () => {
  await page.viewport(1280, 720)
  workbench = createFakeWorkbench(smallRoll())
})
afterEach(() => openDialog(null))

describe('start screen', () => {
  it('breaks no accessibility rule', async () => {
    await render(<App workbench={workbench} />)
    expect(await brokenRules()).toEqual([])
  })

  it('hands dropped files to the workbench', async () => {
    await render(<App workbench={workbench} />)
    const dataTransfer = new DataTransfer()
    dataTransfer.items.add(new File(['x'], 'meadow.dng'))
    dispatchEvent(new DragEvent('dragover', { dataTransfer, cancelable: true }))
    await expect.element(page.getByText('Drop to open')).toBeVisible()
    dispatchEvent(new DragEvent('drop', { dataTransfer, cancelable: true }))
    await expect.poll(() => callsOf('openFiles').length).toBe(1)
    expect((callsOf('openFiles')[0][1] as File[]).map((file) => file.name)).toEqual(['meadow.dng'])
  })
})

describe('sliders', () => {
  const red = () => page.getByRole('slider', { name: 'Red to green' })

  it('make one gesture of a held key', async () => {
    await openBench()
    red().element().focus()
    await key('{ArrowRight>3}{/ArrowRight}')
    expect(workbench.calls.map(([name]) => name)).toEqual([
      'beginGesture',
      'changeValues',
      'changeValues',
      'changeValues',
      'endGesture',
    ])
    expect(stepOf('neutral').values.redStops).toBeCloseTo(0.03, 9)
    await expect.element(page.getByRole('button', { name: 'Undo: Red to green' })).toBeEnabled()
  })

  it('make one gesture of a drag and none of a touch without movement', async () => {
    await openBench()
    const box = red().element().getBoundingClientRect()
    const point = (type: string, x: number) =>
      red()
        .element()
        .dispatchEvent(
          new PointerEvent(type, { clientX: x, clientY: box.top + 10, pointerId: 1, isPrimary: true, bubbles: true }),
        )
    const middle = box.left + box.width / 2
    // A made-up pointer cannot be captured; the drag itself does not need it.
    red().element().setPointerCapture = () => {}
    point('pointerdown', middle)
    point('pointerup', middle)
    expect(workbench.calls).toEqual([])
    point('pointerdown', middle)
    point('pointermove', middle + box.width / 8)
    point('pointermove', middle + box.width / 4)
    point('pointerup', middle + box.width / 4)
    expect(workbench.calls.map(([name]) => name)).toEqual([
      'beginGesture',
      'changeValues',
      'changeValues',
      'endGesture',
    ])
    expect(stepOf('neutral').values.redStops).toBeCloseTo(2, 9)
  })

  it('move finely with shift, jump with Page, Home and End, and reset with Delete', async () => {
    await openBench()
    red().element().focus()
    await key('{Shift>}{ArrowRight}{/Shift}')
    expect(stepOf('neutral').values.redStops).toBeCloseTo(0.001, 9)
    await key('{PageUp}')
    expect(stepOf('neutral').values.redStops).toBeCloseTo(0.1, 9)
    await key('{Home}')
    expect(stepOf('neutral').values.redStops).toBe(-4)
    await key('{End}')
    expect(stepOf('neutral').values.redStops).toBe(4)
    await key('{Delete}')
    expect(stepOf('neutral').values.redStops).toBe(0)
  })

  it('take typed numbers beyond their travel, with either decimal mark and minus, and leave what cannot be read', async () => {
    await openBench()
    const field = page.getByRole('textbox', { name: 'Blue to green, typed' })
    await field.fill('−6,25')
    await key('{Enter}')
    expect(stepOf('neutral').values.blueStops).toBe(-6.25)
    await expect.element(field).toHaveValue('−6.25')
    await field.fill('much')
    await key('{Enter}')
    expect(stepOf('neutral').values.blueStops).toBe(-6.25)
    await field.fill('2')
    await key('{Escape}')
    expect(stepOf('neutral').values.blueStops).toBe(-6.25)
  })
})

describe('chain', () => {
  it('moves a step by key and keeps the focus on it; pinned steps stay', async () => {
    await openBench()
    const turn = () => page.getByRole('button', { name: 'Hue turn', exact: true })
    turn().element().focus()
    await key('{Shift>}{ArrowLeft}{/Shift}')
    expect(chainIds()).toEqual(['neutral', 'hueTurn', 'channelMix', 'exposureContrast', 'outputTransform'])
    expect(document.activeElement).toBe(turn().element())
    await key('{Shift>}{ArrowLeft}{/Shift}')
    expect(chainIds()[0]).toBe('neutral')
    expect(callsOf('moveStep')).toHaveLength(1)
    await key('{Shift>}{ArrowRight}{/Shift}')
    expect(document.activeElement).toBe(turn().element())
    await key('{Shift>}{ArrowRight}{/Shift}')
    expect(chainIds()).toEqual(['neutral', 'channelMix', 'exposureContrast', 'hueTurn', 'outputTransform'])
  })

  it('moves a step by dragging its name', async () => {
    await openBench()
    await userEvent.dragAndDrop(
      page.getByRole('button', { name: 'Channel mix' }),
      page.getByRole('button', { name: 'Exposure and contrast' }),
    )
    expect(chainIds()).toEqual(['neutral', 'hueTurn', 'exposureContrast', 'channelMix', 'outputTransform'])
  })

  it('switches, adds and removes steps', async () => {
    await openBench()
    await page.getByRole('switch', { name: 'Hue turn acts' }).click()
    expect(stepOf('hueTurn').enabled).toBe(false)
    await page.getByRole('button', { name: 'Add a step' }).click()
    await page.getByRole('menuitem', { name: 'Hue turn' }).click()
    expect(chainIds().filter((id) => id === 'hueTurn')).toHaveLength(2)
    await page.getByRole('button', { name: 'Remove' }).click()
    expect(chainIds().filter((id) => id === 'hueTurn')).toHaveLength(1)
  })

  it('exchanges red and blue, and warns of a mix that loses a colour', async () => {
    await openBench()
    await page.getByRole('button', { name: 'Channel mix' }).click()
    await page.getByRole('button', { name: 'Exchange red and blue' }).click()
    expect(stepOf('channelMix').values.rows).toEqual([0, 0, 1, 0, 1, 0, 1, 0, 0])
    await expect.element(page.getByText('Greys stay grey.')).toBeVisible()
    await page.getByRole('textbox', { name: 'Red in blue' }).fill('0')
    await page.getByRole('textbox', { name: 'Blue in blue' }).fill('0')
    await key('{Enter}')
    await expect.element(page.getByText(/nearly loses one direction of colour/)).toBeVisible()
    await expect.element(page.getByText(/tints greys/)).toBeVisible()
  })

  it('inverts hues in one press', async () => {
    await openBench()
    await page.getByRole('button', { name: 'Hue turn', exact: true }).click()
    await page.getByRole('button', { name: 'Invert hues' }).click()
    expect(stepOf('hueTurn').values.angleDeg).toBe(180)
  })
})

describe('probe', () => {
  it('is taken up by key, roams with arrows, and commits with Enter', async () => {
    await openBench()
    await key('n')
    const start = workbench.session.getState().probe!.place
    await key('{ArrowRight}{ArrowRight}{ArrowDown}')
    const moved = workbench.session.getState().probe!.place
    expect(moved.x).toBeGreaterThan(start.x)
    expect(moved.y).toBeGreaterThan(start.y)
    await key('{Shift>}{ArrowRight}{/Shift}')
    expect(workbench.session.getState().probe!.place.x - moved.x).toBeGreaterThan(3 * (moved.x - start.x))
    const { neutral } = workbench.session.getState().probe!
    await key('{Enter}')
    expect(callsOf('commitProbe')).toHaveLength(1)
    expect(stepOf('neutral').values).toMatchObject(neutral!)
  })

  it('leaves everything as it was on Escape', async () => {
    await openBench()
    const before = workbench.edit.getState().shown!.chain
    await key('n{ArrowLeft}{ArrowUp}{Escape}')
    expect(workbench.session.getState()).toMatchObject({ tool: 'pan', probe: null })
    expect(workbench.edit.getState().shown!.chain).toBe(before)
    expect(callsOf('escape')).toHaveLength(1)
  })

  it('follows the pointer, says how reliable the pick is, and commits on a click', async () => {
    await openBench()
    await page.getByRole('button', { name: 'Probe', exact: true }).click()
    await userEvent.hover(area(), { position: { x: 430, y: 420 } })
    await expect.element(page.getByText('412 cells, none clipped, ±0.01 stop.', { exact: true })).toBeVisible()
    await userEvent.click(area(), { position: { x: 430, y: 420 } })
    expect(callsOf('commitProbe')).toHaveLength(1)
  })

  it('acts while N is held and not longer', async () => {
    await openBench()
    await key('{n>}')
    expect(workbench.session.getState().tool).toBe('probe')
    await new Promise((resolve) => setTimeout(resolve, 450))
    await key('{/n}')
    expect(workbench.session.getState().tool).toBe('pan')
  })
})

describe('picture', () => {
  it('zooms about the pointer with the wheel and changes the sample with shift', async () => {
    await openBench()
    const element = area().element()
    const { left, top } = element.getBoundingClientRect()
    const wheel = (deltaY: number, shiftKey = false) =>
      element.dispatchEvent(
        new WheelEvent('wheel', { deltaY, shiftKey, clientX: left + 300, clientY: top + 200, cancelable: true }),
      )
    const before = workbench.placeAt(300, 200)!
    wheel(-300)
    const after = workbench.placeAt(300, 200)!
    expect(workbench.session.getState().view.fit).toBe(false)
    // Within a screen pixel: the frame is laid on whole device pixels.
    expect(Math.abs(after.x - before.x) * 6016).toBeLessThan(6)
    const { sampleRadiusPx } = workbench.session.getState()
    wheel(-100, true)
    expect(workbench.session.getState().sampleRadiusPx).toBeGreaterThan(sampleRadiusPx)
  })

  it('shows the reason in place of a frame that failed', async () => {
    await openBench()
    await page.getByRole('button', { name: /frame 1 of 6/ }).click()
    await page.getByRole('row', { name: /Frame 6/ }).click()
    await expect.element(page.getByRole('heading', { name: 'meadow-06.dng could not be opened' })).toBeVisible()
    await expect.element(page.getByText(/Copy it from the card again/)).toBeVisible()
  })
})

describe('bench', () => {
  it('breaks no accessibility rule, idle and with probe, work and messages', async () => {
    await openBench()
    expect(await brokenRules()).toEqual([])
    await key('n')
    workbench.session.setState({
      tasks: [{ id: 'a', label: 'Reading', fraction: 0.4, secondsLeft: 12, cancellable: true }],
      notices: [{ id: 'b', tone: 'problem', text: 'meadow-06.dng could not be opened.' }],
    })
    await page.getByRole('button', { name: 'Channel mix' }).click()
    await expect.element(page.getByText('about 10 s left')).toBeVisible()
    expect(await brokenRules()).toEqual([])
  })

  it('states the filter', async () => {
    await openBench()
    await page.getByRole('button', { name: 'filter 590 nm' }).click()
    await page.getByRole('option', { name: '720 nm' }).click()
    expect(callsOf('stateFilter')).toEqual([['stateFilter', 'frame-1', 720]])
  })

  it('cancels work and dismisses messages', async () => {
    await openBench()
    workbench.session.setState({
      tasks: [{ id: 'a', label: 'Exporting', fraction: null, secondsLeft: null, cancellable: true }],
      notices: [{ id: 'b', tone: 'note', text: 'Saved.' }],
    })
    await page.getByRole('button', { name: 'Cancel: Exporting' }).click()
    await page.getByRole('button', { name: 'Dismiss' }).click()
    expect(callsOf('cancelTask', 'dismissNotice')).toEqual([
      ['cancelTask', 'a'],
      ['dismissNotice', 'b'],
    ])
  })
})

describe('dialogs', () => {
  it('export what was chosen and break no accessibility rule', async () => {
    await openBench()
    await page.getByRole('button', { name: 'Export' }).click()
    expect(await brokenRules()).toEqual([])
    await page.getByRole('button', { name: /Format/ }).click()
    await page.getByRole('option', { name: 'JPEG' }).click()
    await expect.element(page.getByText('meadow-01.jpg')).toBeVisible()
    await page.getByRole('dialog').getByRole('button', { name: 'Export', exact: true }).click()
    expect(callsOf('exportShown')).toEqual([
      ['exportShown', { format: 'jpeg', space: 'srgb', quality: 92, keepLocation: false }],
    ])
  })

  it('help opens with ?, and single keys can be switched off', async () => {
    await openBench()
    await key('?')
    await expect.element(page.getByRole('dialog', { name: 'Help and keys' })).toBeVisible()
    expect(await brokenRules()).toEqual([])
    await page.getByText('Single keys act').click()
    await key('{Escape}')
    await expect.element(page.getByRole('dialog')).not.toBeInTheDocument()
    await key('n')
    expect(workbench.session.getState().tool).toBe('pan')
    localStorage.clear()
  })
})
