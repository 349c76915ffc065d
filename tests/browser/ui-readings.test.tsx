// What the screen tells of the picture in patches and numbers.
import { describe, expect, it } from 'vitest'
import { page } from 'vitest/browser'

import { brokenRules, key, openBench } from '../support/open-screen.tsx'

const patchRows = () => [...document.querySelectorAll('.stop')].map((stop) => stop.querySelectorAll('.patch').length)

describe('patches under the chain', () => {
  it('stand under every step that acts, and follow the chain', async () => {
    const { workbench, stepOf } = await openBench()
    await expect.poll(patchRows).toEqual([5, 5, 5, 5, 5])
    const last = () => document.querySelector<HTMLElement>('.stop:last-child .patch')!.style.background
    const before = last()
    workbench.setStepEnabled(stepOf('hueTurn').id, false)
    await expect.poll(patchRows).toEqual([5, 5, 0, 5, 5])
    workbench.setValues(stepOf('exposureContrast').id, { exposureEv: -2 }, 'Exposure')
    await expect.poll(last).not.toBe(before)
  })
})

describe('histograms', () => {
  it('stand ready while the sensor is still being counted, and fill when it is', async () => {
    const { workbench } = await openBench()
    const { readings } = workbench.session.getState()
    const table = page.getByRole('table', { name: 'Photosites at the ends, before any gain' })
    workbench.session.setState({ readings: {} })
    await expect.element(table).toHaveTextContent(/Red––Green––Blue––/)
    await expect.poll(patchRows).toEqual([0, 0, 0, 0, 0])
    workbench.session.setState({ readings })
    await expect.element(table).toHaveTextContent(/Rednone0.52 %Greennonenone/)
    await expect.poll(patchRows).toEqual([5, 5, 5, 5, 5])
  })

  it('say what is clipped in words, mark it in the picture by button and key, and fold away', async () => {
    const { workbench } = await openBench()
    const clipping = () => workbench.session.getState().clippingShown
    const table = page.getByRole('table', { name: 'Photosites at the ends, before any gain' })
    await expect.element(table).toHaveTextContent(/Rednone0.52 %Greennonenone/)
    await page.getByRole('button', { name: 'Mark what the sensor clipped' }).click()
    expect(clipping()).toBe('sensor')
    const legend = page.getByRole('group', { name: 'What is marked in the picture' })
    await expect.element(legend).toHaveTextContent(/Clipped in the sensor.*red 0.52 %.*green none.*blue none/)
    expect(await brokenRules()).toEqual([])
    await key('l')
    expect(clipping()).toBe('output')
    await expect.element(legend).toHaveTextContent(/Clipped in the output.*red.*wholly black/)
    await expect
      .element(page.getByRole('button', { name: 'Mark what the output clips' }))
      .toHaveAttribute('aria-pressed', 'true')
    await legend.getByRole('button', { name: 'Next: no marks' }).click()
    expect(clipping()).toBe('none')
    await expect.element(legend).not.toBeInTheDocument()
    await page.getByRole('button', { name: 'Histograms' }).click()
    await expect.element(table).not.toBeInTheDocument()
    await page.getByRole('button', { name: 'Histograms' }).click()
    await expect.element(table).toBeVisible()
  })
})

describe('trace', () => {
  const rows = () => [...document.querySelectorAll('.trace-table tbody tr')].map((row) => row.textContent ?? '')

  it('follows a place through the chain in numbers, and breaks no accessibility rule', async () => {
    const { workbench, stepOf } = await openBench()
    await expect.poll(() => rows().length).toBe(6)
    const pointed = rows()
    await page.getByRole('button', { name: 'Place 2' }).click()
    await expect.poll(() => document.querySelectorAll('.place-marker').length).toBe(5)
    await expect.poll(rows).not.toEqual(pointed)
    const before = rows()
    expect(before[0]).toMatch(/^Sensor\d+\.\d\d+\.\d\d+\.\d$/)
    workbench.setValues(stepOf('hueTurn').id, { angleDeg: 180 }, 'Hue inversion')
    await expect.poll(rows).not.toEqual(before)
    expect(rows().slice(0, 3)).toEqual(before.slice(0, 3))
    workbench.setStepEnabled(stepOf('hueTurn').id, false)
    await expect.poll(() => rows().length).toBe(5)
    expect(await brokenRules()).toEqual([])
  })
})
