// Controls of the screen: what hands do to a slider must arrive as gestures, and typed numbers as they were meant.
import { describe, expect, it } from 'vitest'
import { page } from 'vitest/browser'

import { key, openBench } from '../support/open-screen.tsx'

/** Commands of a gesture; what only asks for places in the picture is not counted. */
const gestureCommands = ['beginGesture', 'changeValues', 'endGesture', 'cancelGesture', 'setValues']

describe('sliders', () => {
  const red = () => page.getByRole('slider', { name: 'Red to green' })

  it('make one gesture of a held key', async () => {
    const { stepOf, callsOf } = await openBench()
    red().element().focus()
    await key('{ArrowRight>3}{/ArrowRight}')
    expect(callsOf(...gestureCommands).map(([name]) => name)).toEqual([
      'beginGesture',
      'changeValues',
      'changeValues',
      'changeValues',
      'endGesture',
    ])
    expect(stepOf('neutral').values.redStops).toBeCloseTo(0.03, 9)
    await expect.element(page.getByRole('button', { name: 'Undo: Red to green' })).toBeEnabled()
  })

  it('make one gesture of a drag and none of a touch without movement', async () => {
    const { stepOf, callsOf } = await openBench()
    const box = red().element().getBoundingClientRect()
    const point = (type: string, x: number) =>
      red()
        .element()
        .dispatchEvent(
          new PointerEvent(type, { clientX: x, clientY: box.top + 10, pointerId: 1, isPrimary: true, bubbles: true }),
        )
    const middle = box.left + box.width / 2
    // A made-up pointer cannot be captured; the drag itself does not need it.
    red().element().setPointerCapture = () => {}
    point('pointerdown', middle)
    point('pointerup', middle)
    expect(callsOf(...gestureCommands)).toEqual([])
    point('pointerdown', middle)
    point('pointermove', middle + box.width / 8)
    point('pointermove', middle + box.width / 4)
    point('pointerup', middle + box.width / 4)
    expect(callsOf(...gestureCommands).map(([name]) => name)).toEqual([
      'beginGesture',
      'changeValues',
      'changeValues',
      'endGesture',
    ])
    expect(stepOf('neutral').values.redStops).toBeCloseTo(2, 9)
  })

  it('take a drag back when the system takes the pointer away', async () => {
    const { stepOf, callsOf } = await openBench()
    const slider = red().element()
    const { left, width, top } = slider.getBoundingClientRect()
    const point = (type: string, clientX: number) =>
      slider.dispatchEvent(new PointerEvent(type, { clientX, clientY: top + 10, pointerId: 1, bubbles: true }))
    // A made-up pointer cannot be captured; the drag itself does not need it.
    slider.setPointerCapture = () => {}
    point('pointerdown', left + width / 2)
    point('pointermove', left + width * 0.75)
    expect(stepOf('neutral').values.redStops).toBeCloseTo(2, 9)
    point('pointercancel', left + width * 0.75)
    expect(callsOf(...gestureCommands).at(-1)).toEqual(['cancelGesture'])
    expect(stepOf('neutral').values.redStops).toBe(0)
    point('pointermove', left + width * 0.9)
    expect(stepOf('neutral').values.redStops).toBe(0)
  })

  it('move finely with shift, jump with Page, Home and End, and reset with Delete', async () => {
    const { stepOf } = await openBench()
    red().element().focus()
    await key('{Shift>}{ArrowRight}{/Shift}')
    expect(stepOf('neutral').values.redStops).toBeCloseTo(0.001, 9)
    await key('{PageUp}')
    expect(stepOf('neutral').values.redStops).toBeCloseTo(0.1, 9)
    await key('{Home}')
    expect(stepOf('neutral').values.redStops).toBe(-4)
    await key('{End}')
    expect(stepOf('neutral').values.redStops).toBe(4)
    await key('{Delete}')
    expect(stepOf('neutral').values.redStops).toBe(0)
  })

  it('take typed numbers beyond their travel, with either decimal mark and minus, and leave what cannot be read', async () => {
    const { stepOf } = await openBench()
    const field = page.getByRole('textbox', { name: 'Blue to green, typed' })
    await field.fill('−6,25')
    await key('{Enter}')
    expect(stepOf('neutral').values.blueStops).toBe(-6.25)
    await expect.element(field).toHaveValue('−6.25')
    await field.fill('much')
    await key('{Enter}')
    expect(stepOf('neutral').values.blueStops).toBe(-6.25)
    await field.fill('2')
    await key('{Escape}')
    expect(stepOf('neutral').values.blueStops).toBe(-6.25)
    await field.fill('3')
    await key('{ArrowUp}')
    expect(stepOf('neutral').values.blueStops).toBeCloseTo(3.01, 6)
  })
})
