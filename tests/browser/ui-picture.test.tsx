// Probe and picture on screen: roaming, keeping and leaving by pointer and key; zoom and sample size by wheel.
import { describe, expect, it } from 'vitest'
import { page, userEvent } from 'vitest/browser'

import { key, openBench, pressProbeKey } from '../support/open-screen.tsx'

const area = () => page.getByRole('application', { name: /^Picture of/ })

describe('probe', () => {
  it('is taken up by key, roams with arrows, and commits with Enter', async () => {
    const { callsOf, stepOf, workbench } = await openBench()
    pressProbeKey(80)
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
    const { callsOf, workbench } = await openBench()
    const before = workbench.edit.getState().shown!.chain
    pressProbeKey(80)
    await key('{ArrowLeft}{ArrowUp}{Escape}')
    expect(workbench.session.getState()).toMatchObject({ tool: 'pan', probe: null })
    expect(workbench.edit.getState().shown!.chain).toBe(before)
    expect(callsOf('escape')).toHaveLength(1)
  })

  it('follows the pointer, says how reliable the pick is, and commits on a click', async () => {
    const { callsOf } = await openBench()
    await page.getByRole('button', { name: 'Probe', exact: true }).click()
    await userEvent.hover(area(), { position: { x: 430, y: 420 } })
    const sentence = 'Good pick: 412 cells, none clipped, ±0.01 stop.'
    await expect.element(page.getByRole('contentinfo').getByText(sentence)).toBeVisible()
    await userEvent.click(area(), { position: { x: 430, y: 420 } })
    expect(callsOf('commitProbe')).toHaveLength(1)
  })

  it('draws the sample as large as it is in the picture', async () => {
    const { workbench } = await openBench()
    workbench.setTool('probe')
    workbench.roam({ x: 0.5, y: 0.5 })
    const ring = () => document.querySelector<SVGCircleElement>('.ring-line circle')!.getBoundingClientRect()
    for (const sampleRadiusPx of [4, 96]) {
      workbench.session.setState({ sampleRadiusPx })
      const { radius } = workbench.cssOf(workbench.session.getState().probe!.place)!
      await expect.poll(() => ring().width).toBeCloseTo(2 * radius, 1)
    }
  })

  it('acts while N is held and not longer', async () => {
    const { callsOf, workbench } = await openBench()
    pressProbeKey(450)
    expect(callsOf('setTool')).toEqual([
      ['setTool', 'probe'],
      ['setTool', 'pan'],
    ])
    expect(workbench.session.getState().tool).toBe('pan')
  })
})

describe('picture', () => {
  it('zooms about the pointer with the wheel and changes the sample with shift', async () => {
    const { workbench } = await openBench()
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

  it('changes the sample by keys, and asks for the largest and the smallest there is', async () => {
    const { workbench } = await openBench()
    const radius = () => workbench.session.getState().sampleRadiusPx
    await key('n')
    const first = radius()
    await key(',')
    expect(radius()).toBeLessThan(first)
    await key('.')
    expect(radius()).toBe(first)
    for (let presses = 0; presses < 30; presses++) await key(',')
    expect(radius()).toBeLessThanOrEqual(0.5)
    workbench.setSampleRadius(5_000)
    await key('.')
    expect(radius()).toBe(Infinity)
  })

  it('keeps its place while another frame is on its way or fails; what tells of the last one waits out of reach', async () => {
    const { workbench } = await openBench()
    const place = () => document.querySelector('#picture-area')!.getBoundingClientRect().toJSON()
    const heading = () => document.querySelector('#step-title')
    const before = place()
    await workbench.showFrame('frame-4')
    await expect.poll(() => heading()?.closest('[inert]')).toBeTruthy()
    expect(heading()).toHaveTextContent('Neutral')
    expect(place()).toEqual(before)
    await workbench.showFrame('frame-2')
    await expect.poll(() => document.querySelector('[inert]')).toBeNull()
    await expect.element(page.getByRole('heading', { name: 'meadow-02.dng' })).toBeVisible()
    await workbench.showFrame('frame-6')
    await expect.poll(heading).toBeNull()
    expect(place()).toEqual(before)
  })

  it('shows the reason in place of a frame that failed', async () => {
    await openBench()
    await page.getByRole('button', { name: /frame 1 of 6/ }).click()
    await page.getByRole('row', { name: /Frame 6/ }).click()
    await expect.element(page.getByRole('heading', { name: 'meadow-06.dng could not be opened' })).toBeVisible()
    await expect.element(page.getByText(/Copy it from the card again/)).toBeVisible()
  })
})
