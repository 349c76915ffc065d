// Neutral in camera on screen: reached from the neutral and from the help, advice by filter and light, and the roll's own numbers.
import { expect, it } from 'vitest'
import { page } from 'vitest/browser'

import { brokenRules, openBench } from '../support/open-screen.tsx'

const choose = async (label: RegExp, option: string) => {
  await page.getByRole('dialog').getByRole('button', { name: label }).click()
  await page.getByRole('option', { name: option, exact: true }).click()
}

it('starts with the stated filter, advises by filter and light, and breaks no rule', async () => {
  await openBench()
  await page.getByRole('button', { name: 'Neutral in camera' }).click()
  await expect.element(page.getByText(/^Concrete, white cloth or paint/)).toBeVisible()
  await expect.element(page.getByText(/moves by 0.44 stop/)).toBeVisible()
  await expect.element(page.getByText(/Keep the sun and its reflections out of the frame/)).toBeVisible()
  await expect.element(page.getByRole('row', { name: /Green grass.*0.85.*tints strongly/ })).toBeVisible()
  expect(await brokenRules()).toEqual([])
  await choose(/Light/, 'overcast')
  await expect.element(page.getByText(/^Something near to white/)).toBeVisible()
  await expect.element(page.getByText(/in sunlight. Under an overcast sky they change by 0.02 stop/)).toBeVisible()
  await choose(/Filter/, '850 nm')
  await expect.element(page.getByText(/finished in black and white/)).toBeVisible()
  await expect.element(page.getByRole('row', { name: /Green grass/ })).not.toBeInTheDocument()
})

it('says which filter it assumes where none is stated', async () => {
  const { workbench } = await openBench()
  workbench.session.setState(({ entries }) => ({
    entries: entries.map((entry) => ({ ...entry, statedFilterNm: undefined })),
  }))
  await page.getByRole('button', { name: 'Neutral in camera' }).click()
  const assumed = page.getByText('No filter is stated for this frame: 720 nm is assumed until you choose.')
  await expect.element(assumed).toBeVisible()
  await choose(/Filter/, '665 nm')
  await expect.element(assumed).not.toBeInTheDocument()
})

it('shows what the roll came to, and is reached from the help', async () => {
  const { workbench } = await openBench()
  workbench.adoptNeutral({ redStops: -1.25, blueStops: 0.5 }, 'Neutral')
  await page.getByRole('button', { name: 'Help and keys' }).click()
  await page.getByRole('dialog').getByRole('button', { name: 'Neutral in camera' }).click()
  await expect.element(page.getByRole('row', { name: 'meadow-01.dng +1.25 −0.50' })).toBeVisible()
})
