// Colour tables on the screen: what a table step says and asks for, and the dialog by which steps leave as a colour table.
import { describe, expect, it } from 'vitest'
import { page } from 'vitest/browser'

import { openDialog } from '../../src/ui/screen-store.ts'
import { brokenRules, key, openBench } from '../support/open-screen.tsx'

const leaves = {
  id: 'a'.repeat(64),
  name: 'Blue leaves',
  kind: '3d',
  size: 33,
  facts: {
    takes: 'srgb',
    gives: 'srgb',
    remarks: ['Made for 590 nm', 'Rimeleaf encoding: srgb'],
    sampled: { largest: 0.0042, mean: 0.00011 },
  },
} as const

async function openTableStep() {
  const bench = await openBench()
  bench.workbench.addStep('colourLut')
  await expect.element(page.getByRole('heading', { name: 'Colour table' })).toBeVisible()
  return bench
}

describe('a colour table step', () => {
  it('says that it changes nothing yet, and takes a file into itself', async () => {
    const { callsOf, stepOf } = await openTableStep()
    await expect.element(page.getByText('Colour passes unchanged until')).toBeVisible()
    expect(await brokenRules()).toEqual([])
    const field = document.querySelector<HTMLInputElement>(
      '.table-room ~ * input[type=file], .table-room input[type=file]',
    )!
    const file = new File(['LUT_1D_SIZE 2\n0 0 0\n1 1 1\n'], 'leaves.cube')
    const bag = new DataTransfer()
    bag.items.add(file)
    field.files = bag.files
    field.dispatchEvent(new Event('change', { bubbles: true }))
    await expect.poll(() => callsOf('loadTable').length).toBe(1)
    expect(callsOf('loadTable')[0].slice(2)).toEqual([stepOf('colourLut').id])
  })

  it('chooses among known tables by keyboard, and says what is to be known of one', async () => {
    const { workbench, stepOf } = await openTableStep()
    workbench.session.setState({ tables: [leaves] })
    const list = page.getByRole('button', { name: /none yet/ })
    await expect.element(list).toBeVisible()
    list.element().focus()
    await key('{Enter}')
    await key('{Enter}')
    await expect.poll(() => stepOf('colourLut').values.table).toBe(leaves.id)
    await expect.element(page.getByText('A cube of 33 points a side.')).toBeVisible()
    await expect.element(page.getByText(/by 0\.011 % of its range in the mean, at most by 0\.42 %/)).toBeVisible()
    await expect.element(page.getByText('“Made for 590 nm”')).toBeVisible()
    await expect.element(page.getByRole('button', { name: 'Undo: Colour table Blue leaves' })).toBeEnabled()
    expect(await brokenRules()).toEqual([])
  })

  it('says that its table is missing, after it was forgotten too', async () => {
    const { workbench, stepOf } = await openTableStep()
    workbench.session.setState({ tables: [leaves] })
    workbench.chooseTable(stepOf('colourLut').id, leaves.id)
    await page.getByRole('button', { name: 'Forget this table' }).click()
    await expect.element(page.getByText(/The table “Blue leaves” is not in this browser/)).toBeVisible()
    await expect.element(page.getByRole('button', { name: /Blue leaves \(missing\)/ })).toBeVisible()
    expect(await brokenRules()).toEqual([])
  })
})

describe('saving a colour table', () => {
  async function openMap() {
    const bench = await openBench()
    openDialog('table')
    await expect.element(page.getByRole('dialog', { name: 'Save as a colour table' })).toBeVisible()
    await expect.element(page.getByText('0.06', { exact: true }).first()).toBeVisible()
    return bench
  }
  const dialog = () => page.getByRole('dialog', { name: 'Save as a colour table' })
  const turn = (name: RegExp) => (dialog().getByRole('switch', { name }).element() as HTMLElement).click()

  it('begins with the mapping steps and shows the measured differences before saving', async () => {
    const { callsOf } = await openMap()
    const [, settings] = callsOf('bakeTable').at(-1)!
    expect(settings).toMatchObject({
      format: 'cube',
      size: 33,
      encoding: 'nearest',
      stepIds: ['channelMix-1', 'hueTurn-1'],
    })
    await expect.element(dialog().getByRole('row', { name: 'of this frame 0.06 0.24 0.91' })).toBeVisible()
    await expect.element(dialog().getByRole('row', { name: 'spread evenly 0.09 0.36 1.82' })).toBeVisible()
    await expect.element(dialog().getByText(/ROMM RGB as encoded .* it comes nearest to the chain/)).toBeVisible()
    await expect.element(dialog().getByText(/^12 % of the colours spread evenly lie outside/)).toBeVisible()
    expect(await brokenRules()).toEqual([])
  })

  it('measures anew what is changed, and saves what was measured', async () => {
    const { callsOf } = await openMap()
    await dialog().getByRole('textbox', { name: 'Name' }).fill('Lower meadow')
    turn(/Exposure and contrast/)
    await expect.element(dialog().getByText('lower-meadow.cube')).toBeVisible()
    await expect.poll(() => callsOf('bakeTable').length).toBeGreaterThan(1)
    const save = dialog().getByRole('button', { name: 'Save' })
    await expect.element(save).toBeEnabled()
    await save.click()
    const [, settings] = callsOf('saveTable').at(-1)!
    expect(settings).toMatchObject({
      title: 'Lower meadow',
      stepIds: ['channelMix-1', 'hueTurn-1', 'exposureContrast-1'],
    })
    await expect.element(dialog()).not.toBeInTheDocument()
  })

  it('asks CLF for points only where a step is sampled, and nothing can be saved without a step', async () => {
    await openMap()
    await dialog().getByRole('button', { name: /File/ }).click()
    await page.getByRole('option', { name: 'CLF' }).click()
    await expect.element(dialog().getByText(/Every step stands in it exactly/)).toBeVisible()
    await expect.element(dialog().getByText('Points a side')).not.toBeInTheDocument()
    turn(/Exposure and contrast/)
    await expect
      .element(dialog().getByText(/Sampled behind the ACEScct curve: exposure and contrast; the rest/))
      .toBeVisible()
    await expect.element(dialog().getByText('Points a side')).toBeVisible()
    for (const name of [/Channel mix/, /Hue turn/, /Exposure and contrast/]) turn(name)
    await expect.element(dialog().getByText('No step is in it yet: switch one in.')).toBeVisible()
    await expect.element(dialog().getByRole('button', { name: 'Save' })).toBeDisabled()
    expect(await brokenRules()).toEqual([])
  })

  it('offers a device link for the spaces of pictures only, and says what it is', async () => {
    const { callsOf } = await openMap()
    await dialog().getByRole('button', { name: /File/ }).click()
    await page.getByRole('option', { name: 'ICC device link' }).click()
    await expect.element(dialog().getByText(/apply to a picture in ROMM RGB/)).toBeVisible()
    await expect.element(dialog().getByText(/\.icc$/)).toBeVisible()
    await expect
      .poll(() => callsOf('bakeTable').at(-1)?.[1])
      .toMatchObject({ format: 'icc', encoding: 'nearest', size: 33 })
    await dialog()
      .getByRole('button', { name: /Takes and gives/ })
      .click()
    const offered = page.getByRole('option').elements()
    expect(offered.map(({ textContent }) => textContent)).toEqual([
      'Nearest',
      'sRGB',
      'Display P3',
      'Rec. 2020',
      'ROMM RGB',
    ])
    expect(await brokenRules()).toEqual([])
  })
})
