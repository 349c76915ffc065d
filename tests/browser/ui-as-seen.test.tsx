// The sliders as seen: right is warmer in the finished picture, whatever the chain exchanges on its way.
import { describe, expect, it } from 'vitest'
import { page } from 'vitest/browser'

import { RED_BLUE_EXCHANGE } from '../../src/colour/mix-matrices.ts'
import { key, openBench } from '../support/open-screen.tsx'

const third = 1 / 3
const warmth = () => page.getByRole('slider', { name: 'Warmth as seen', exact: true })
const names = (calls: readonly (readonly unknown[])[]) => calls.map(([name]) => name)

/** A made-up pointer on an element: it cannot be captured, and the drag itself does not need it. */
function pointer(element: Element, type: string, x: number, y: number) {
  element.setPointerCapture = () => {}
  element.dispatchEvent(
    new PointerEvent(type, { clientX: x, clientY: y, pointerId: 1, isPrimary: true, bubbles: true }),
  )
}

async function openSeen() {
  const bench = await openBench()
  await expect.element(warmth()).toBeVisible()
  return {
    ...bench,
    neutral: () => bench.stepOf('neutral').values as { redStops: number; blueStops: number },
    setMix: (rows: readonly number[]) =>
      bench.workbench.setValues(bench.stepOf('channelMix').id, { rows: [...rows] }, 'Mix'),
  }
}

describe('as seen', () => {
  const redMinusBlue = ({ redStops, blueStops }: { redStops: number; blueStops: number }) => redStops - blueStops

  it('right is warmer on either side of an exchange; the position stays readable and goes back with undo', async () => {
    const { workbench, neutral, setMix } = await openSeen()
    ;(warmth().element() as HTMLElement).focus()
    await key('{PageUp}{PageUp}{PageUp}')
    expect(redMinusBlue(neutral())).toBeGreaterThan(0.1)
    await expect.element(warmth()).toHaveAttribute('aria-valuenow', '30')
    expect(workbench.edit.getState().shown!.undoName).toBe('Warmth as seen')
    for (let press = 0; press < 3; press++) workbench.undo()
    await expect.element(warmth()).toHaveAttribute('aria-valuenow', '0')
    expect(redMinusBlue(neutral())).toBe(0)

    setMix(RED_BLUE_EXCHANGE)
    ;(warmth().element() as HTMLElement).focus()
    await key('{PageUp}{PageUp}{PageUp}')
    expect(redMinusBlue(neutral())).toBeLessThan(-0.1)
    await expect.element(warmth()).toHaveAttribute('aria-valuenow', '30')
  })

  it('is one entry for one drag, back to the pick with Delete, and counts anew from another neutral', async () => {
    const { workbench, neutral, callsOf } = await openSeen()
    const box = warmth().element().getBoundingClientRect()
    const element = warmth().element()
    pointer(element, 'pointerdown', box.left + box.width / 2, box.top + 10)
    for (const dx of [20, 40, 60]) pointer(element, 'pointermove', box.left + box.width / 2 + dx, box.top + 10)
    pointer(element, 'pointerup', box.left + box.width / 2 + 60, box.top + 10)
    expect(names(callsOf('beginGesture', 'endGesture'))).toEqual(['beginGesture', 'endGesture'])
    expect(neutral().redStops).not.toBe(0)
    ;(element as HTMLElement).focus()
    await key('{Delete}')
    expect(neutral().redStops).toBeCloseTo(0, 4)
    await expect.element(warmth()).toHaveAttribute('aria-valuenow', '0')
    await key('{PageUp}')
    workbench.adoptNeutral({ redStops: -1, blueStops: 0.5 }, 'Neutral')
    await expect.element(warmth()).toHaveAttribute('aria-valuenow', '0')
  })

  it('stays where it is in black and white, and says why', async () => {
    const { neutral, setMix } = await openSeen()
    setMix([third, third, third, third, third, third, third, third, third])
    ;(warmth().element() as HTMLElement).focus()
    await key('{PageUp}')
    await expect.element(page.getByText(/shows no more of it/)).toBeVisible()
    await expect.element(warmth()).toHaveAttribute('aria-valuenow', '0')
    expect(neutral()).toMatchObject({ redStops: 0, blueStops: 0 })
  })
})
