// The chain on screen: moving, switching, adding and removing steps, and what is done to a step in one press.
import { describe, expect, it } from 'vitest'
import { page, userEvent } from 'vitest/browser'

import { key, openBench } from '../support/open-screen.tsx'

describe('chain', () => {
  it('moves a step by key and keeps the focus on it; pinned steps stay', async () => {
    const { callsOf, chainIds } = await openBench()
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
    const { chainIds } = await openBench()
    await userEvent.dragAndDrop(
      page.getByRole('button', { name: 'Channel mix' }),
      page.getByRole('button', { name: 'Exposure and contrast' }),
    )
    expect(chainIds()).toEqual(['neutral', 'hueTurn', 'exposureContrast', 'channelMix', 'outputTransform'])
  })

  it('switches, adds and removes steps', async () => {
    const { chainIds, stepOf } = await openBench()
    await page.getByRole('switch', { name: 'Hue turn acts' }).click()
    expect(stepOf('hueTurn').enabled).toBe(false)
    await page.getByRole('button', { name: 'Add a step' }).click()
    await page.getByRole('menuitem', { name: 'Hue turn' }).click()
    expect(chainIds().filter((id) => id === 'hueTurn')).toHaveLength(2)
    await page.getByRole('button', { name: 'Remove' }).click()
    expect(chainIds().filter((id) => id === 'hueTurn')).toHaveLength(1)
  })

  it('exchanges red and blue, and warns of a mix that loses a colour', async () => {
    const { stepOf } = await openBench()
    await page.getByRole('button', { name: 'Channel mix' }).click()
    await page.getByRole('button', { name: 'Exchange red and blue' }).click()
    expect(stepOf('channelMix').values.rows).toEqual([0, 0, 1, 0, 1, 0, 1, 0, 0])
    await expect.element(page.getByText('Greys stay grey.')).toBeVisible()
    await page.getByText('Hold the sum of each row').click()
    await page.getByRole('textbox', { name: 'Red in blue' }).fill('0')
    await page.getByRole('textbox', { name: 'Blue in blue' }).fill('0')
    await key('{Enter}')
    await expect.element(page.getByText(/nearly loses one direction of colour/)).toBeVisible()
    await expect.element(page.getByText(/tints greys/)).toBeVisible()
  })

  it('inverts hues in one press', async () => {
    const { stepOf } = await openBench()
    await page.getByRole('button', { name: 'Hue turn', exact: true }).click()
    await page.getByRole('button', { name: 'Invert hues' }).click()
    expect(stepOf('hueTurn').values.angleDeg).toBe(180)
  })
})
