// Where a step acts, on the screen over a workbench in memory: adding, joining, moving and picking, by pointer and by keys.
import { expect, test } from 'vitest'
import { page } from 'vitest/browser'

import { brokenRules, key, openBench } from '../support/open-screen.tsx'

async function openExposure() {
  const bench = await openBench()
  await page.getByRole('button', { name: 'Exposure and contrast', exact: true }).click()
  await expect.element(page.getByRole('heading', { name: 'Where' })).toBeVisible()
  const add = async (kind: string) => {
    await page.getByRole('button', { name: /^(Act only in a place|Add a place)$/ }).click()
    await page.getByRole('menuitem', { name: kind }).click()
  }
  return { ...bench, add, mask: () => bench.stepOf('exposureContrast').mask }
}

test('places are added, joined and removed, each under a name that undo shows, and break no rule of access', async () => {
  const { add, mask, workbench } = await openExposure()
  expect(mask()).toBeUndefined()
  await add('Foliage')
  await add('Range of levels')
  expect(mask()!.parts.map(({ kind, combine }) => [kind, combine])).toEqual([
    ['foliage', 'or'],
    ['level', 'or'],
  ])
  expect(await brokenRules()).toEqual([])
  await page.getByRole('button', { name: /Acts$/ }).click()
  await page.getByRole('option', { name: 'Not there' }).click()
  expect(mask()!.parts[1].combine).toBe('not')
  await page.getByRole('button', { name: 'Remove foliage' }).click()
  expect(mask()!.parts.map(({ kind }) => kind)).toEqual(['level'])
  expect(workbench.edit.getState().shown!.undoName).toBe('Remove foliage')
  await page.getByRole('button', { name: 'Remove range of levels' }).click()
  expect(mask()).toBeUndefined()
})

test('a new place begins as far from grey as the filter leaves it', async () => {
  const { add, mask, workbench } = await openExposure()
  workbench.session.setState(({ shown }) => ({ shown: { ...shown!, facts: { ...shown!.facts, filterNm: 665 } } }))
  await add('Foliage')
  expect(mask()!.parts[0].values.borderStops).toBeCloseTo(-0.25, 2)
})

test('the middle and the sides of a round area are moved by keys, a held key as one change', async () => {
  const { add, mask, workbench } = await openExposure()
  await add('Round area')
  const middle = page.getByRole('button', { name: /^Middle of the round area/ })
  await expect.element(middle).toBeVisible()
  ;(middle.element() as HTMLElement).focus()
  await key('{Shift>}{ArrowRight}{/Shift}')
  const [x, y] = mask()!.parts[0].values.centre as number[]
  expect(x).toBeGreaterThan(0.5)
  expect(y).toBe(0.5)
  ;(page.getByRole('button', { name: /^Side of the round area/ }).element() as HTMLElement).focus()
  await key('{ArrowRight}')
  expect(mask()!.parts[0].values.halfWidth).toBeGreaterThan(0.25)
  expect(mask()!.parts[0].values.halfHeight).toBe(0.25)
  expect(await brokenRules()).toEqual([])
  workbench.undo()
  expect(mask()!.parts[0].values.halfWidth).toBe(0.25)
})

test('a hue is picked in the picture by keys, and what has none says so', async () => {
  const { add, mask, workbench } = await openExposure()
  await add('Hue')
  const before = mask()!.parts[0].values.hueDeg
  await page.getByRole('button', { name: 'Pick in the picture' }).click()
  await expect.element(page.getByRole('application', { name: /Pick for hue/ })).toBeVisible()
  await key('{Shift>}{ArrowUp}{ArrowUp}{/Shift}{Enter}')
  expect(mask()!.parts[0].values.hueDeg).not.toBe(before)
  expect(workbench.edit.getState().shown!.undoName).toBe('Hue: picked')
  await expect.element(page.getByRole('application', { name: /Pick for hue/ })).not.toBeInTheDocument()
  await page.getByRole('button', { name: 'Pick in the picture' }).click()
  expect(workbench.session.getState().tool).toBe('place pick')
  await key('n')
  await expect.element(page.getByRole('application', { name: /Pick for hue/ })).not.toBeInTheDocument()
  await key('n')
  await add('Foliage')
  await page.getByRole('button', { name: 'Pick in the picture' }).click()
  await key('{Enter}')
  await expect.element(page.getByText('The materials of this frame are still being told apart.')).toBeVisible()
  await key('{Escape}')
  await expect.element(page.getByRole('application', { name: /Pick for foliage/ })).not.toBeInTheDocument()
})

test('strength is a place of its own: less than all needs no other', async () => {
  const { mask } = await openExposure()
  const strength = page.getByRole('slider', { name: 'Acts by' })
  ;(strength.element() as HTMLElement).focus()
  await key('{PageDown}')
  expect(mask()).toEqual({ parts: [], inverted: false, strength: 0.9 })
  await key('{Delete}')
  expect(mask()).toBeUndefined()
})

test('where the only exposure is limited to a place, its lack elsewhere is told, and the place can move on to a step of its own', async () => {
  const { add, mask, workbench } = await openExposure()
  await add('Foliage')
  const give = page.getByRole('button', { name: 'Give the places their own step' })
  await expect.element(give).not.toBeInTheDocument()
  workbench.setValues('exposureContrast-1', { exposureEv: 2 }, 'Exposure')
  await expect.element(page.getByText(/lacks its exposure of \+2\.00 EV/)).toBeVisible()
  expect(await brokenRules()).toEqual([])
  await give.click()
  expect(mask()).toBeUndefined()
  const { chain, undoName } = workbench.edit.getState().shown!
  const own = chain.find(({ id }) => id === workbench.session.getState().selectedStepId)!
  expect([own.id, own.values.exposureEv, own.mask!.parts[0].kind]).toEqual(['exposureContrast-2', 0, 'foliage'])
  expect(undoName).toBe('Places on a step of their own')
  await expect.element(give).not.toBeInTheDocument()
})
