// The sheet of frames: cards of one size whatever they hold, in a sheet that never outgrows the window.
import { describe, expect, it } from 'vitest'
import { page } from 'vitest/browser'

import { brokenRules, key, openBench } from '../support/open-screen.tsx'
import { paintScene } from '../support/painted-scene.ts'

const boxOf = (element: Element) => element.getBoundingClientRect()
const cards = () => [...document.querySelectorAll('.frame-card')]

async function openSheet() {
  const bench = await openBench()
  const { entries } = bench.workbench.session.getState()
  const changed = entries.with(1, {
    ...entries[1],
    fileName: `meadow-${'long-'.repeat(20)}02.dng`,
    pictureUrl: paintScene(120, 180).toDataURL(),
    statedFilterNm: null,
  })
  const reason = 'This file holds nothing that could be read. '.repeat(8)
  const more = Array.from({ length: 40 }, (_, i) => ({
    ...changed[5],
    id: `more-${i}`,
    state: { kind: 'failed', reason } as const,
  }))
  bench.workbench.session.setState({ entries: [...changed, ...more] })
  await page.getByRole('button', { name: /frame 1 of 46/ }).click()
  await expect.poll(() => cards().length).toBe(46)
  await expect.poll(() => [...document.images].every((image) => image.complete)).toBe(true)
  return bench
}

describe('sheet of frames', () => {
  it('keeps every card at one size with its content inside', async () => {
    await openSheet()
    const [first] = cards().map(boxOf)
    for (const card of cards()) {
      const box = boxOf(card)
      expect(box.width).toBeCloseTo(first.width, 1)
      expect(box.height).toBeCloseTo(first.height, 1)
      const picture = boxOf(card.querySelector('.frame-picture')!)
      expect(picture.width / picture.height).toBeCloseTo(1.5, 2)
      for (const part of card.querySelectorAll('*')) {
        const inner = boxOf(part)
        // A cell of the list has no box of its own; of a long reason its frame cuts what does not fit.
        if (inner.width === 0 || part.matches('.frame-reason *')) continue
        expect(inner.left).toBeGreaterThanOrEqual(box.left - 0.5)
        expect(inner.right).toBeLessThanOrEqual(box.right + 0.5)
        expect(inner.bottom).toBeLessThanOrEqual(box.bottom + 0.5)
      }
    }
  })

  it('scrolls inside the window and breaks no accessibility rule', async () => {
    await openSheet()
    const sheet = document.querySelector('.frame-sheet')!
    expect(boxOf(sheet).bottom).toBeLessThanOrEqual(720)
    expect(sheet.scrollHeight).toBeGreaterThan(sheet.clientHeight)
    expect(sheet.scrollWidth).toBe(sheet.clientWidth)
    expect(await brokenRules()).toEqual([])
  })
})

describe('stated filter', () => {
  it('may be any cut-on, 700 nm too where none was stated', async () => {
    const { workbench } = await openBench()
    const [{ id }] = workbench.session.getState().entries
    const stated = () => workbench.session.getState().entries[0].statedFilterNm
    workbench.stateFilter(id, null)
    await page.getByRole('button', { name: 'full spectrum' }).click()
    const field = page.getByRole('textbox', { name: 'Another cut-on in nanometres' })
    await expect.element(field).toHaveValue('')
    await field.fill('700')
    await key('{Enter}')
    expect(stated()).toBe(700)
  })
})
