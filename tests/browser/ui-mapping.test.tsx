// Editors of mapping steps on the screen: what hands do to bars and threads must arrive as the step's numbers, one gesture each.
import { describe, expect, it } from 'vitest'
import { page } from 'vitest/browser'

import { readBands } from '../../src/operations/hue-bands.ts'
import { brokenRules, key, openBench } from '../support/open-screen.tsx'

const gestureCalls = ['beginGesture', 'changeValues', 'endGesture', 'cancelGesture', 'setValues']

async function openWith(operation: string, title: string) {
  const bench = await openBench()
  bench.workbench.addStep(operation)
  await expect.element(page.getByRole('heading', { name: title, exact: true })).toBeVisible()
  bench.workbench.calls.length = 0
  return bench
}

describe('channel mix', () => {
  it('holds a row’s sum while a bar is stepped, and shares what it takes', async () => {
    const { stepOf, callsOf } = await openBench()
    await page.getByRole('button', { name: 'Channel mix' }).click()
    page.getByRole('slider', { name: 'Blue in red' }).element().focus()
    await key('{PageUp}')
    const rows = stepOf('channelMix').values.rows as number[]
    expect(rows.slice(0, 3).map((weight) => weight.toFixed(3))).toEqual(['0.500', '0.000', '0.500'])
    expect(callsOf(...gestureCalls).map(([name]) => name)).toEqual(['beginGesture', 'changeValues', 'endGesture'])
    expect(await brokenRules()).toEqual([])
  })

  it('moves channels on and back, and exchanges in part', async () => {
    const { stepOf } = await openBench()
    await page.getByRole('button', { name: 'Channel mix' }).click()
    await page.getByRole('textbox', { name: 'Share of the exchange, typed' }).fill('50')
    await key('{Enter}')
    expect(stepOf('channelMix').values.rows).toEqual([0.5, 0, 0.5, 0, 1, 0, 0.5, 0, 0.5])
    await expect.element(page.getByText(/nearly loses one direction of colour/)).toBeVisible()
    await page.getByRole('button', { name: 'Back to no mix' }).click()
    await page.getByRole('button', { name: /^On by one/ }).click()
    expect(stepOf('channelMix').values.rows).toEqual([0, 0, 1, 1, 0, 0, 0, 1, 0])
    await page.getByRole('button', { name: /^Back by one/ }).click()
    expect(stepOf('channelMix').values.rows).toEqual([1, 0, 0, 0, 1, 0, 0, 0, 1])
  })
})

describe('hue bands', () => {
  it('are moved and turned by the ends of their threads with keys, each held key one gesture', async () => {
    const { stepOf, callsOf } = await openWith('hueBands', 'Hue bands')
    const band = (index: number) => readBands(stepOf('hueBands').values.bands as number[])[index]
    page.getByRole('slider', { name: 'Band 3, its hue' }).element().focus()
    await key('{ArrowRight>3}{/ArrowRight}')
    expect(band(2).hueDeg).toBeCloseTo(113, 9)
    expect(callsOf(...gestureCalls).map(([name]) => name)).toEqual([
      'beginGesture',
      ...Array(3).fill('changeValues'),
      'endGesture',
    ])
    page.getByRole('slider', { name: 'Band 3, what becomes of it' }).element().focus()
    await key('{PageDown}')
    expect(band(2).turnDeg).toBe(-15)
    await page.getByRole('textbox', { name: 'Light, typed' }).fill('-0.5')
    await key('{Enter}')
    expect(band(2)).toEqual({ hueDeg: 113, turnDeg: -15, strengthStops: 0, lightEv: -0.5 })
    await page.getByRole('button', { name: 'Leave this band as it comes' }).click()
    expect(band(2)).toEqual({ hueDeg: 113, turnDeg: 0, strengthStops: 0, lightEv: 0 })
    expect(await brokenRules()).toEqual([])
  })

  it('are picked in the picture: sideways turns, upwards strengthens, Escape takes it back', async () => {
    const { stepOf, workbench } = await openWith('hueBands', 'Hue bands')
    const before = stepOf('hueBands').values.bands as number[]
    await page.getByRole('button', { name: 'Pick a hue in the picture' }).click()
    const layer = document.querySelector<HTMLElement>('.hue-pick')!
    layer.setPointerCapture = () => {}
    const box = layer.getBoundingClientRect()
    const point = (type: string, dx: number, dy: number) =>
      layer.dispatchEvent(
        new PointerEvent(type, {
          clientX: box.left + box.width / 2 + dx,
          clientY: box.top + box.height * 0.3 + dy,
          pointerId: 1,
          bubbles: true,
        }),
      )
    point('pointerdown', 0, 0)
    point('pointermove', 40, -50)
    const changed = readBands(stepOf('hueBands').values.bands as number[]).filter(({ turnDeg }) => turnDeg !== 0)
    expect(changed).toHaveLength(1)
    expect(changed[0].turnDeg).toBe(10)
    expect(changed[0].strengthStops).toBeCloseTo(0.4, 9)
    await key('{Escape}')
    expect(stepOf('hueBands').values.bands).toEqual(before)
    await key('n')
    expect(document.querySelector('.hue-pick')).toBe(null)
    await page.getByRole('button', { name: 'Pick a hue in the picture' }).click()
    expect(workbench.session.getState()).toMatchObject({ tool: 'hue pick', probe: null })
    await page.getByRole('button', { name: 'Channel mix' }).click()
    await expect.poll(() => workbench.session.getState().tool).toBe('pan')
  })
})

describe('infrared split', () => {
  it('finds the shares of a stated filter, and says what is missing without one', async () => {
    const { stepOf, workbench } = await openWith('infraredSplit', 'Infrared split')
    await page.getByRole('button', { name: 'Find the shares from the frame' }).click()
    const { redPercent, greenPercent } = stepOf('infraredSplit').values as Record<string, number>
    expect(redPercent).toBeGreaterThan(5)
    expect(greenPercent).toBeGreaterThan(redPercent)
    workbench.session.setState(({ shown }) => ({
      shown: shown && { ...shown, facts: { ...shown.facts, filterNm: undefined } },
    }))
    await expect.element(page.getByText(/State the filter first/)).toBeVisible()
    await expect.element(page.getByRole('button', { name: 'Find the shares from the frame' })).toBeDisabled()
    expect(await brokenRules()).toEqual([])
  })
})

describe('colour strength and visible light', () => {
  it('say what the noise allows, and whether the file brings a matrix', async () => {
    await openWith('colourStrength', 'Colour strength')
    await expect.element(page.getByText(/The noise of a single pixel allows × \d/)).toBeVisible()
    await openWith('visibleMatrix', 'Visible light')
    await expect.element(page.getByText(/brings no matrix for visible light/)).toBeVisible()
  })
})
