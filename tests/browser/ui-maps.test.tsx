// The map shelf on the screen: pointing shows, pressing lays on as one change, one's own maps are kept, named, removed and read in.
import { expect, it } from 'vitest'
import { page, userEvent } from 'vitest/browser'

import { hasMapping, mappingOf } from '../../src/edits/colour-map.ts'
import { ownMaps } from '../../src/edits/own-maps.ts'
import { writeMapFile } from '../../src/roll/map-file.ts'
import { brokenRules, key, openBench } from '../support/open-screen.tsx'

async function openShelf() {
  const bench = await openBench()
  await page.getByRole('tab', { name: 'Map shelf' }).click()
  await expect.element(page.getByRole('heading', { name: 'Made for 590 nm' })).toBeVisible()
  const { workbench } = bench
  return {
    ...bench,
    chain: () => workbench.edit.getState().shown!.chain,
    maps: () => workbench.session.getState().maps,
  }
}
const frost = ownMaps.find(({ name }) => name === 'First frost')!

it('maps for the frame’s filter stand first; pointing shows one in the picture and leaving takes it back', async () => {
  const { workbench } = await openShelf()
  const before = workbench.edit.getState().shown!.chain
  await page.getByRole('button', { name: 'First frost' }).hover()
  expect(hasMapping(workbench.session.getState().preview!, frost.steps)).toBe(true)
  await userEvent.hover(page.getByRole('tab', { name: 'Board' }))
  expect(workbench.session.getState().preview).toBeNull()
  expect(workbench.edit.getState().shown!.chain).toBe(before)
  expect(await brokenRules()).toEqual([])
})

it('pressing lays a map on the frame as one change that undo names', async () => {
  const { workbench, chain } = await openShelf()
  const before = chain()
  await page.getByRole('button', { name: 'First frost' }).click()
  expect(hasMapping(chain(), frost.steps)).toBe(true)
  await expect.element(page.getByRole('button', { name: 'First frost, on the frame now' })).toBeVisible()
  await page.getByRole('button', { name: 'Undo: Colour map First frost' }).click()
  expect(workbench.edit.getState().shown!.chain).toEqual(before)
})

it('by keys alone: arrows go from map to map and show them, Enter lays one on', async () => {
  const { workbench, chain } = await openShelf()
  page.getByRole('button', { name: 'First frost' }).element().focus()
  await key('{ArrowDown}')
  const next = ownMaps[ownMaps.indexOf(frost) + 1]
  expect(hasMapping(workbench.session.getState().preview!, next.steps)).toBe(true)
  await key('{Enter}')
  expect(hasMapping(chain(), next.steps)).toBe(true)
  expect(workbench.session.getState().preview).toBeNull()
})

it('the frame’s mapping is kept as a map of one’s own, named in place, removed, and put back', async () => {
  const { chain, maps } = await openShelf()
  await page.getByRole('button', { name: 'Keep the frame’s mapping as a map' }).click()
  await key('Winter on the mere{Enter}')
  expect(maps().map(({ name, filterNm }) => [name, filterNm])).toEqual([['Winter on the mere', 590]])
  expect(maps()[0].steps).toEqual(mappingOf(chain()))
  await page.getByRole('button', { name: 'More for Winter on the mere' }).click()
  await page.getByRole('menuitem', { name: 'Remove from the shelf' }).click()
  expect(maps()).toEqual([])
  await page.getByRole('button', { name: 'Put it back' }).click()
  expect(maps().map(({ name }) => name)).toEqual(['Winter on the mere'])
})

it('a pointer that rests takes nothing from the keys when maps scroll under it; one that moves does', async () => {
  const { workbench } = await openShelf()
  const [face, below] = [...document.querySelectorAll<HTMLElement>('.map-face')]
  const dispatch = (type: string) =>
    below.dispatchEvent(new PointerEvent(type, { bubbles: true, pointerType: 'mouse' }))
  page.getByRole('button', { name: 'First frost' }).element().focus()
  await key('{ArrowDown}{ArrowUp}')
  const byKeys = workbench.session.getState().preview
  expect([document.activeElement, hasMapping(byKeys!, frost.steps)]).toEqual([face, true])
  for (const type of ['pointerover', 'pointerout', 'pointerover']) {
    dispatch(type)
    expect(workbench.session.getState().preview).toBe(byKeys)
  }
  dispatch('pointermove')
  expect(workbench.session.getState().preview).not.toBe(byKeys)
  expect(workbench.session.getState().preview).not.toBeNull()
})

it('a map that is removed by key takes its preview along and leaves the focus to its neighbour', async () => {
  const { workbench, maps } = await openShelf()
  await page.getByRole('button', { name: 'Keep the frame’s mapping as a map' }).click()
  await key('Winter on the mere{Enter}')
  await key('{ArrowUp}{ArrowDown}')
  await expect.poll(() => page.getByText('Preview: colour map Winter on the mere').query()).not.toBe(null)
  await key('{Delete}')
  expect(maps()).toEqual([])
  expect(document.activeElement?.classList).toContain('map-face')
  await key('{Escape}')
  expect(page.getByText(/^Preview: /).query()).toBe(null)
  expect(workbench.session.getState().preview).toBe(null)
})

it('maps are read in from a file, and a file without maps says why', async () => {
  const { workbench, maps } = await openShelf()
  const chooser = page.getByLabelText('File with colour maps')
  await userEvent.upload(chooser, new File([writeMapFile([frost], {})], 'frost.json', { type: 'application/json' }))
  await expect.poll(() => maps().length).toBe(1)
  expect(maps()[0].steps).toEqual(frost.steps)
  await userEvent.upload(chooser, new File(['{}'], 'nothing.json', { type: 'application/json' }))
  await expect.poll(() => workbench.session.getState().notices.at(-1)?.text).toMatch(/“nothing.json” holds no usable/)
  expect(maps()).toHaveLength(1)
})
