// The tone steps on the screen: what hands and keys do to the curve, to balance and to weights must arrive in the chain.
import { describe, expect, it } from 'vitest'
import { page, userEvent } from 'vitest/browser'

import { brokenRules, key, openBench } from '../support/open-screen.tsx'

async function openStep(title: string) {
  const bench = await openBench()
  await page.getByRole('button', { name: 'Add a step' }).click()
  await page.getByRole('menuitem', { name: title }).click()
  await expect.element(page.getByRole('heading', { name: title })).toBeVisible()
  return bench
}

describe('tone curve', () => {
  const point = (index: number, of: number) => page.getByRole('slider', { name: `Point ${index} of ${of}` })
  const pointsOf = ({ stepOf }: Awaited<ReturnType<typeof openStep>>) => stepOf('toneCurve').values.points

  it('adds, moves and takes away points by keys alone, a held key being one change', async () => {
    const bench = await openStep('Tone curve')
    point(1, 2).element().focus()
    await key('{Enter}')
    expect(pointsOf(bench)).toEqual([0, 0, 0.5, 0.5, 1, 1])
    await expect.element(point(2, 3)).toHaveFocus()
    await key('{ArrowUp>4}{/ArrowUp}')
    await key('{Shift>}{ArrowLeft}{/Shift}')
    expect(pointsOf(bench)).toEqual([0, 0, 0.498, 0.54, 1, 1])
    await expect.element(point(2, 3)).toHaveAttribute('aria-valuetext', '49.8 % becomes 54.0 %')
    bench.workbench.undo()
    bench.workbench.undo()
    expect(pointsOf(bench)).toEqual([0, 0, 0.5, 0.5, 1, 1])
    point(2, 3).element().focus()
    await key('{Delete}')
    expect(pointsOf(bench)).toEqual([0, 0, 1, 1])
    await key('{Delete}')
    expect(pointsOf(bench)).toEqual([0, 0, 1, 1])
  })

  it('sets a point where the plot is pressed', async () => {
    const bench = await openStep('Tone curve')
    const plot = document.querySelector('.tone-plot')!
    const { width, height } = plot.getBoundingClientRect()
    await userEvent.click(plot, { position: { x: width * 0.25, y: height * 0.5 } })
    const [, , x, y] = pointsOf(bench) as number[]
    expect(x).toBeCloseTo(0.25, 1)
    expect(y).toBeCloseTo(0.5, 1)
    await expect.element(page.getByRole('button', { name: 'Undo: Tone curve' })).toBeEnabled()
  })

  it('takes black and white from the picture, tells what they cut off, and breaks no accessibility rule', async () => {
    const { stepOf } = await openStep('Tone curve')
    await page.getByRole('button', { name: 'Set both from the picture' }).click()
    expect(stepOf('toneCurve').values.blackPercent).toBeGreaterThan(0)
    await expect.element(page.getByText(/Darker than black: (none|< |0\.[0-4])/)).toBeVisible()
    expect(await brokenRules()).toEqual([])
  })
})

describe('tonal balance', () => {
  it('names its groups for hands, ears and undo, and breaks no accessibility rule', async () => {
    const { stepOf } = await openStep('Tonal balance')
    page.getByRole('slider', { name: 'Cyan to red: shadows' }).element().focus()
    await key('{PageUp}')
    page.getByRole('slider', { name: 'Yellow to blue: highlights' }).element().focus()
    await key('{ArrowDown}')
    expect(stepOf('tonalBalance').values).toMatchObject({ shadowRed: 0.1, highlightBlue: -0.01 })
    await expect.element(page.getByRole('button', { name: 'Undo: Yellow to blue: highlights' })).toBeEnabled()
    expect(await brokenRules()).toEqual([])
  })
})

describe('black and white', () => {
  it('shows what becomes of the reference places, and breaks no accessibility rule', async () => {
    await openStep('Black and white')
    const rows = () => [...document.querySelectorAll('.grey-response tr')].map((row) => row.lastChild!.textContent)
    await expect.poll(() => rows().length).toBe(5)
    const before = rows()
    page.getByRole('slider', { name: 'Weights over the mean: Blue' }).element().focus()
    await key('{End}')
    await expect.poll(rows).not.toEqual(before)
    await expect.element(page.getByText('Grey is made of −33 % red, −33 % green and 167 % blue')).toBeVisible()
    expect(await brokenRules()).toEqual([])
  })
})
