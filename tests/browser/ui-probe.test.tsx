// The probe beyond the ring: the divided picture, and outlines drawn by pointer and by keys.
import { describe, expect, it } from 'vitest'
import { page, userEvent } from 'vitest/browser'

import { brokenRules, key, openBench } from '../support/open-screen.tsx'

const area = () => page.getByRole('application', { name: /^Picture of/ })
/** By button: a key counts as held where a busy machine takes its time over a tap. */
const takeUp = () => page.getByRole('button', { name: 'Probe', exact: true }).click()
const line = () => page.getByRole('slider', { name: 'Where the picture is divided' })

describe('divided picture', () => {
  it('divides by key and button, names both halves, and keeps the place of the line', async () => {
    const { workbench } = await openBench()
    const divide = () => workbench.session.getState().divide
    await takeUp()
    await key('d')
    expect(divide()).toBe(0.5)
    await expect.element(page.getByText('As it is')).toBeVisible()
    await expect.element(area().getByText('Probe', { exact: true })).toBeVisible()
    line().element().focus()
    await key('{ArrowRight}{ArrowRight}{Shift>}{ArrowLeft}{/Shift}')
    expect(divide()).toBeCloseTo(0.42, 9)
    expect(await brokenRules()).toEqual([])
    await key('{Escape}')
    await expect.element(page.getByText('As it is')).toBeVisible()
    await expect.element(area().getByText('Point at a neutral to see it here')).toBeVisible()
    await page.getByRole('button', { name: 'Divided' }).click()
    expect(divide()).toBe(null)
    await page.getByRole('button', { name: 'Divided' }).click()
    expect(divide()).toBeCloseTo(0.42, 9)
    workbench.setDivide(0.5)
    await key('d')
  })

  it('moves the line from anywhere along it; a click there is the probe’s', async () => {
    const { workbench, callsOf } = await openBench()
    workbench.setDivide(0.5)
    await expect.element(line()).toBeVisible()
    const element = area().element()
    element.setPointerCapture = () => {}
    const { left, top, width } = element.getBoundingClientRect()
    const { view } = workbench.session.getState()
    const at = (share: number) => ({ clientX: left + width * share, clientY: top + 200 })
    const fire = (target: Element, type: string, share: number) =>
      target.dispatchEvent(new PointerEvent(type, { bubbles: true, button: 0, pointerId: 1, ...at(share) }))
    const middle = at(0.5)
    const grip = document.elementFromPoint(middle.clientX + 6, middle.clientY)!
    expect(grip).toBe(document.elementFromPoint(middle.clientX - 6, middle.clientY))
    fire(grip, 'pointerdown', 0.5)
    fire(element, 'pointermove', 0.7)
    fire(element, 'pointerup', 0.7)
    expect(workbench.session.getState()).toMatchObject({ view, divide: expect.closeTo(0.7, 6) })
    await takeUp()
    fire(grip, 'pointerdown', 0.7)
    fire(element, 'pointermove', 0.1)
    fire(element, 'pointerup', 0.1)
    expect(workbench.session.getState().divide).toBeCloseTo(0.1, 6)
    expect(callsOf('commitProbe')).toHaveLength(0)
    fire(grip, 'pointerdown', 0.1)
    fire(grip, 'pointerup', 0.1)
    expect(callsOf('commitProbe')).toHaveLength(1)
    workbench.setDivide(null)
  })

  it('moves the line by its handle without moving picture or probe', async () => {
    const { workbench } = await openBench()
    workbench.setDivide(0.5)
    await expect.element(line()).toBeVisible()
    const handle = line().element()
    const { view } = workbench.session.getState()
    const { left, top } = handle.getBoundingClientRect()
    const fire = (type: string, clientX: number) =>
      handle.dispatchEvent(
        new PointerEvent(type, { bubbles: true, button: 0, pointerId: 1, clientX, clientY: top + 9, isPrimary: true }),
      )
    // Capturing needs a pointer that is really down.
    handle.setPointerCapture = () => {}
    fire('pointerdown', left + 14)
    fire('pointermove', left + 14 + area().element().clientWidth * 0.25)
    fire('pointerup', left + 14)
    expect(workbench.session.getState().divide).toBeCloseTo(0.75, 2)
    expect(workbench.session.getState()).toMatchObject({ view, probe: null })
    workbench.setDivide(null)
  })
})

describe('outline', () => {
  it('is set corner by corner with keys, sampled, kept as a mark and then as the neutral', async () => {
    const { workbench, callsOf, stepOf } = await openBench()
    await key('o')
    expect(workbench.session.getState()).toMatchObject({ tool: 'probe', sampleWay: 'outline', probe: null })
    const wide = '{Shift>}{ArrowRight}{/Shift}'
    await key(`{ArrowRight} ${wide} {Shift>}{ArrowDown}{/Shift} ${wide} {Backspace}`)
    expect(workbench.session.getState().probe).toBe(null)
    await key('{Enter}')
    const [[, corners]] = callsOf('probeOutline') as [string, [number, number][]][]
    expect(corners).toHaveLength(3)
    expect(corners[1][0]).toBeGreaterThan(corners[0][0])
    expect(corners[1][1]).toBe(corners[0][1])
    expect(corners[2][1]).toBeGreaterThan(corners[1][1])
    const { neutral } = workbench.session.getState().probe!
    await page.getByRole('button', { name: /^Keep as a mark/ }).click()
    expect(workbench.edit.getState().shown!.marks).toMatchObject([{ gains: neutral }])
    await page.getByRole('button', { name: 'Make it neutral' }).click()
    expect(stepOf('neutral').values).toMatchObject(neutral!)
    expect(workbench.session.getState()).toMatchObject({ tool: 'pan', sampleWay: 'ring' })
  })

  it('is drawn by pointer; a click alone draws nothing, and pointing elsewhere leaves the sample', async () => {
    const { workbench, callsOf } = await openBench()
    await takeUp()
    await key('o')
    const element = area().element()
    const { left, top } = element.getBoundingClientRect()
    element.setPointerCapture = () => {}
    const fire = (type: string, x: number, y: number) =>
      element.dispatchEvent(
        new PointerEvent(type, { bubbles: true, button: 0, pointerId: 1, clientX: left + x, clientY: top + y }),
      )
    fire('pointerdown', 300, 250)
    fire('pointerup', 300, 250)
    expect(callsOf('probeOutline')).toHaveLength(0)
    fire('pointerdown', 300, 250)
    for (const [x, y] of [
      [340, 250],
      [341, 250],
      [340, 300],
      [300, 300],
    ])
      fire('pointermove', x, y)
    await expect.poll(() => document.querySelector('polyline')).not.toBe(null)
    fire('pointerup', 300, 300)
    const [[, corners]] = callsOf('probeOutline') as [string, [number, number][]][]
    expect(corners).toHaveLength(4)
    await expect.poll(() => document.querySelector('polygon')?.getAttribute('points')?.split(' ').length).toBe(4)
    await userEvent.hover(page.getByRole('heading', { name: 'Neutral' }))
    expect(workbench.session.getState().probe?.outline).toHaveLength(4)
    await key('{Escape}')
    expect(workbench.session.getState()).toMatchObject({ probe: null, tool: 'pan', sampleWay: 'ring' })
  })

  it('says which numbers are the probe’s', async () => {
    const { workbench } = await openBench()
    await takeUp()
    workbench.roam({ x: 0.2, y: 0.8 })
    const { redStops } = workbench.session.getState().probe!.neutral!
    const words = () => document.querySelector('.probe-values')?.textContent
    await expect.poll(words).toContain(`Probered ${redStops < 0 ? '−' : '+'}${Math.abs(redStops).toFixed(2)}`)
  })
})

describe('room', () => {
  it('moves nothing in the panel when the probe is taken up, and cuts no advice while work is under way', async () => {
    const { workbench } = await openBench()
    const below = [page.getByText('Hold brightness'), page.getByRole('button', { name: 'Add a second light' })]
    const tops = () => below.map((one) => one.element().getBoundingClientRect().top)
    await expect.element(below[1]).toBeInTheDocument()
    const before = tops()
    await takeUp()
    expect(tops()).toEqual(before)
    const sentence =
      'Poor pick: 11432 cells, 49 % clipped, ±0.08 stop; it is dark for so few cells; take a larger sample or a brighter place.'
    const { probe } = workbench.session.getState()
    const task = { id: 't', label: 'Exporting meadow-01.tif', fraction: 0.4, secondsLeft: 70, cancellable: true }
    workbench.session.setState({
      probe: { ...probe!, reading: { ...probe!.reading, sentence } },
      tasks: [task, { ...task, id: 'u' }],
    })
    const verdict = page.getByText(sentence).first()
    await expect.element(verdict).toBeVisible()
    const { scrollHeight, clientHeight, scrollWidth, clientWidth } = document.querySelector('.verdict')!
    expect([scrollHeight, scrollWidth]).toEqual([clientHeight, clientWidth])
    expect(tops()).toEqual(before)
    expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(innerWidth)
  })
})
