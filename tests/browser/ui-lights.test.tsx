// The second light on the screen, over a workbench in memory: picks, brush and handles by pointer and by keys.
import { expect, test } from 'vitest'
import { page } from 'vitest/browser'

import { strokesOfNumbers } from '../../src/analysis/two-lights/strokes.ts'
import { brokenRules, key, openBench } from '../support/open-screen.tsx'

async function openSecondLight() {
  const bench = await openBench()
  await page.getByRole('button', { name: 'Add a second light' }).click()
  await expect.element(page.getByRole('heading', { name: 'Second light' })).toBeVisible()
  return { ...bench, values: () => bench.stepOf('secondLight').values }
}

test('a second light stands behind the neutral, is offered once, and breaks no rule of access', async () => {
  const { chainIds } = await openSecondLight()
  expect(chainIds().slice(0, 2)).toEqual(['neutral', 'secondLight'])
  expect(await brokenRules()).toEqual([])
  await page.getByRole('button', { name: 'Neutral', exact: true }).click()
  await page.getByRole('button', { name: 'Go to the second light' }).click()
  await expect.element(page.getByRole('heading', { name: 'Second light' })).toBeVisible()
})

test('the probe picks for the light it was taken up for, then serves the neutral again', async () => {
  const { values, workbench } = await openSecondLight()
  await page.getByRole('button', { name: 'In the shade: pick' }).click()
  await key('{ArrowDown}{ArrowDown}{Enter}')
  expect(values().shade).toHaveLength(5)
  expect(values().sun).toEqual([])
  expect(workbench.session.getState()).toMatchObject({ tool: 'pan', probeTarget: null })
  await page.getByRole('button', { name: 'In the sun: pick' }).click()
  await key('{ArrowDown}{Enter}')
  expect(values().sun).toHaveLength(5)
})

test.each([
  [
    'nearer than .06 stop',
    [1.86, -0.96, -3],
    /^Only 0\.06 stop apart in colour: one neutral serves both lights here/,
    false,
  ],
  ['a little further apart', [1.85, -0.95, -3], /^0\.07 stop apart in colour, 2\.0 in level\.$/, true],
  ['with the shade brighter', [1.9, -1, 0], /^The pick in the shade is the brighter one/, false],
] as const)('picks %s: it says so, and shade is looked for or not', async (_name, ratios, words, hasShade) => {
  const { workbench } = await openSecondLight()
  const picks = { sun: [0.3, 0.8, 1.9, -1, -1], shade: [0.7, 0.8, ...ratios] }
  workbench.setValues('secondLight-1', picks, 'Picks')
  await expect.element(page.getByText(words)).toBeVisible()
  expect(page.getByText('Show the shade in the picture').query() !== null).toBe(hasShade)
})

test('two picks that no light parts so far say what may be wrong', async () => {
  const { workbench } = await openSecondLight()
  const picks = (shadeLog2RedGreen: number) => ({
    sun: [0.3, 0.8, 1.9, -1, -1],
    shade: [0.7, 0.8, shadeLog2RedGreen, -1.4, -4],
  })
  workbench.setValues('secondLight-1', picks(2.2), 'Neutral in the shade')
  await expect.element(page.getByText('0.50 stop apart in colour, 3.0 in level.')).toBeVisible()
  workbench.setValues('secondLight-1', picks(4), 'Neutral in the shade')
  await expect.element(page.getByText(/more than light alone does/)).toBeVisible()
})

test('a pick is taken from a mark that has a place', async () => {
  const { values, workbench } = await openSecondLight()
  workbench.addMark({ redStops: 0, blueStops: 0 }, { x: 0.25, y: 0.75 })
  workbench.addMark({ redStops: 0, blueStops: 0 }, null)
  await page.getByRole('button', { name: 'In the sun: take a mark' }).click()
  expect(page.getByRole('menuitem').elements()).toHaveLength(1)
  await page.getByRole('menuitem', { name: 'Mark A' }).click()
  expect((values().sun as number[]).slice(0, 2)).toEqual([0.25, 0.75])
  expect(workbench.session.getState()).toMatchObject({ tool: 'pan', probeTarget: null })
})

test('where a filter leaves one light only, no second is offered', async () => {
  const { workbench } = await openBench()
  workbench.session.setState(({ shown }) => ({ shown: { ...shown!, facts: { ...shown!.facts, filterNm: 830 } } }))
  await expect.element(page.getByText('one neutral serves sun and shade alike')).toBeVisible()
  expect(page.getByRole('button', { name: 'Add a second light' }).elements()).toHaveLength(0)
})

test('the brush dabs where it is moved by keys, each dab one undo, and Escape puts it away', async () => {
  const { values, workbench } = await openSecondLight()
  workbench.setValues('secondLight-1', { way: 'graduated' }, 'Shade is')
  await page.getByRole('button', { name: 'Paint sun' }).click()
  await key('{ArrowRight}{Enter}{ArrowRight}{Enter}')
  const strokes = strokesOfNumbers(values().strokes as number[])
  expect(strokes.map(({ light, points }) => [light, points.length])).toEqual([
    ['sun', 1],
    ['sun', 1],
  ])
  expect(strokes[1].points[0][0]).toBeGreaterThan(strokes[0].points[0][0])
  await expect.element(page.getByText('2 strokes')).toBeVisible()
  expect(await brokenRules()).toEqual([])
  await key('{Escape}')
  await expect.element(page.getByRole('application', { name: /Brush that paints/ })).not.toBeInTheDocument()
  workbench.undo()
  expect(strokesOfNumbers(values().strokes as number[])).toHaveLength(1)
})

test('the ends of a graduated passage are moved by keys, a held key as one change', async () => {
  const { values, workbench } = await openSecondLight()
  workbench.setValues('secondLight-1', { way: 'graduated' }, 'Shade is')
  const end = page.getByRole('button', { name: /^Shade begins here/ })
  await expect.element(end).toBeVisible()
  ;(end.element() as HTMLElement).focus()
  await key('{Shift>}{ArrowLeft}{/Shift}')
  const ends = values().ends as number[]
  expect(ends[2]).toBeLessThan(0.7)
  expect(ends.toSpliced(2, 1)).toEqual([0.3, 0.5, 0.5])
  expect(await brokenRules()).toEqual([])
})

test('the switch lays the shade over the picture while the step is selected', async () => {
  const { workbench, callsOf } = await openSecondLight()
  const show = page.getByText('Show the shade in the picture')
  await expect.element(page.getByText(/^Once a shade is found or graduated/)).toBeVisible()
  expect(show.query()).toBe(null)
  workbench.setValues('secondLight-1', { way: 'graduated' }, 'Shade is')
  await show.click()
  expect(callsOf('showReach')).toEqual([['showReach', 'secondLight-1']])
  expect(workbench.session.getState().reachOf).toBe('secondLight-1')
})

test('one tool is out at a time: brush, pick and probe put each other away, and go with their controls', async () => {
  const { workbench } = await openSecondLight()
  workbench.setValues('secondLight-1', { way: 'graduated' }, 'Shade is')
  const button = (name: string) => page.getByRole('button', { name, exact: true })
  const brushLayer = page.getByRole('application', { name: /Brush that paints/ })
  const state = () => workbench.session.getState()
  await button('Paint sun').click()
  await expect.element(brushLayer).toBeVisible()
  await button('In the sun: pick').click()
  await expect.element(brushLayer).not.toBeInTheDocument()
  await expect.element(button('Paint sun')).toHaveAttribute('aria-pressed', 'false')
  expect(state().probeTarget).toEqual({ stepId: 'secondLight-1', light: 'sun' })
  await button('Paint shade').click()
  expect(state()).toMatchObject({ tool: 'brush', probe: null, probeTarget: null })
  await button('Paint sun').click()
  await expect.element(page.getByRole('application', { name: /^Brush that paints sun/ })).toBeVisible()
  await button('Probe').click()
  expect(state()).toMatchObject({ tool: 'probe', probeTarget: null })
  await expect.element(brushLayer).not.toBeInTheDocument()
  await button('In the shade: pick').click()
  await button('Channel mix').click()
  await expect.poll(() => state().tool).toBe('pan')
  expect(state()).toMatchObject({ probe: null, probeTarget: null })
})

test('a pick begins with the ring, whatever the probe took before', async () => {
  const { workbench, values } = await openSecondLight()
  await key('o')
  expect(workbench.session.getState()).toMatchObject({ tool: 'probe', sampleWay: 'outline' })
  await page.getByRole('button', { name: 'In the sun: pick' }).click()
  expect(workbench.session.getState()).toMatchObject({ tool: 'probe', sampleWay: 'ring' })
  await page.getByRole('application', { name: /^Picture of/ }).click({ position: { x: 300, y: 380 } })
  expect(values().sun).toHaveLength(5)
})
