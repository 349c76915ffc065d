// Every room of the bench, in a wide and a narrow window: no accessibility rule broken (WCAG 2.2 AA as axe-core implements it), and
// nothing wider than the room it stands in.
import { describe, expect, it, onTestFinished } from 'vitest'
import { page } from 'vitest/browser'

import { mayAdd } from '../../src/edits/stack.ts'
import { maskKinds } from '../../src/operations/masks/mask.ts'
import { operations } from '../../src/operations/index.ts'
import { brokenRules, openBench } from '../support/open-screen.tsx'

const windows = [
  [1280, 720],
  [740, 900],
] as const

/** Parts of the panel and the left column that reach out of them sideways. */
function cutOff(): string[] {
  return ['.panel', '.left'].flatMap((selector) => {
    const room = document.querySelector(selector)
    if (!room) return [`${selector} is missing`]
    const { left, right } = room.getBoundingClientRect()
    const parts = [...room.querySelectorAll('button, input, p, h2, h3, td, label')]
    const out = parts.filter((part) => {
      const box = part.getBoundingClientRect()
      return (
        box.width > 1 &&
        !part.closest('.visually-hidden, [aria-hidden=true]') &&
        (box.left < left - 0.5 || box.right > right + 0.5)
      )
    })
    return out.map((part) => `${selector}: ${part.outerHTML.slice(0, 100)}`)
  })
}

async function judge(where: string, within?: string): Promise<void> {
  const found = { where, broken: await brokenRules(within), cutOff: cutOff() }
  expect(found).toEqual({ where, broken: [], cutOff: [] })
}

/** Parts of the top line that reach out of the window. */
function beyondWindow(): string[] {
  const parts = [...document.querySelectorAll('.top-bar, .top-bar button, .status, .status button')]
  return parts
    .filter((part) => part.getBoundingClientRect().right > window.innerWidth + 0.5)
    .map((part) => part.outerHTML.slice(0, 100))
}

it.each([
  [820, 1180],
  [780, 1100],
  [420, 800],
  [390, 800],
])('for fingers, nothing of the lines above and below lies beyond a window of %i × %i', async (width, height) => {
  const { workbench } = await openBench()
  await page.viewport(width, height)
  // As wide as the style makes targets where the pointer is coarse, which a test cannot ask for.
  document.documentElement.style.setProperty('--target', '40px')
  onTestFinished(() => void document.documentElement.style.removeProperty('--target'))
  expect(beyondWindow()).toEqual([])
  workbench.setTool('probe')
  await expect.element(page.getByRole('button', { name: /Outline/ })).toBeVisible()
  expect(beyondWindow()).toEqual([])
  expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(width)
})

describe.each(windows)('at %i × %i', (width, height) => {
  it('the room of every step holds', async () => {
    const { workbench, chainIds } = await openBench()
    await page.viewport(width, height)
    for (const operation of operations) {
      const { chain } = workbench.edit.getState().shown!
      if (mayAdd(chain, operation)) workbench.addStep(operation.id)
      expect(chainIds()).toContain(operation.id)
      workbench.selectStep(
        workbench.edit.getState().shown!.chain.findLast((step) => step.operation === operation.id)!.id,
      )
      await expect
        .element(page.getByRole('heading', { name: operation.title, exact: true, level: 2 }))
        .toBeInTheDocument()
      await judge(operation.title, '.panel')
    }
  })

  it('places of a step, the map shelf and unfolded readings hold', async () => {
    const { workbench } = await openBench()
    await page.viewport(width, height)
    workbench.addStep('hueTurn')
    for (const { title } of maskKinds) {
      await page.getByRole('button', { name: /^(Act only in a place|Add a place)$/ }).click()
      await page.getByRole('menuitem', { name: title, exact: true }).click()
      await expect.element(page.getByRole('button', { name: `Remove ${title.toLowerCase()}` })).toBeInTheDocument()
      await judge(title)
    }
    await page.getByRole('tab', { name: 'Map shelf' }).click()
    for (const fold of ['Histograms', 'Trace']) {
      const head = page.getByRole('button', { name: fold, exact: true })
      if (head.element().getAttribute('aria-expanded') === 'false') await head.click()
    }
    await judge('map shelf, histograms, trace')
  })
})
