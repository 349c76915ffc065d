// The neutral plane: hands and keys must arrive as gestures, and the ground must tell what the finished picture does, whatever the
// chain exchanges.
import { describe, expect, it } from 'vitest'
import { page } from 'vitest/browser'

import { RED_BLUE_EXCHANGE } from '../../src/colour/mix-matrices.ts'
import { madeUpCamera } from '../support/made-up-camera.ts'
import { brokenRules, key, openBench } from '../support/open-screen.tsx'

const pad = () => page.getByRole('application', { name: /Neutral plane/ })
const neutralDot = () => pad().getByRole('slider', { name: 'Neutral', exact: true })
const names = (calls: readonly (readonly unknown[])[]) => calls.map(([name]) => name)

/** A made-up pointer on an element: it cannot be captured, and the drag itself does not need it. */
function pointer(element: Element, type: string, x: number, y: number, pointerId = 1) {
  element.setPointerCapture = () => {}
  element.dispatchEvent(
    new PointerEvent(type, { clientX: x, clientY: y, pointerId, isPrimary: pointerId === 1, bubbles: true, button: 0 }),
  )
}
function middleOf(element: Element) {
  const { left, top, width, height } = element.getBoundingClientRect()
  return { x: left + width / 2, y: top + height / 2 }
}
function drag(element: Element, dx: number, dy: number, release = true) {
  const { x, y } = middleOf(element)
  pointer(element, 'pointerdown', x, y)
  for (const share of [0.5, 1]) pointer(element, 'pointermove', x + dx * share, y + dy * share)
  if (release) pointer(element, 'pointerup', x + dx, y + dy)
}

async function openPlane() {
  const bench = await openBench()
  await expect.element(neutralDot()).toBeVisible()
  return {
    ...bench,
    neutral: () => bench.stepOf('neutral').values as { redStops: number; blueStops: number },
    marks: () => bench.workbench.edit.getState().shown!.marks,
    setMix: (rows: readonly number[]) =>
      bench.workbench.setValues(bench.stepOf('channelMix').id, { rows: [...rows] }, 'Mix'),
  }
}

describe('the pad', () => {
  it('breaks no rule, with marks on it and a kelvin scale', async () => {
    const { workbench } = await openPlane()
    expect(document.querySelector('.kelvin-line')).toBe(null)
    workbench.session.setState(({ shown }) => ({ shown: { ...shown!, facts: { ...shown!.facts, ...madeUpCamera } } }))
    await page.getByRole('button', { name: 'Show points and kelvin scale' }).click()
    for (const stretch of ['whole', 'usual']) {
      const line = document.querySelector(`.kelvin-${stretch}`)!
      expect(line.getAttribute('d')!.split('L').length).toBeGreaterThan(20)
      expect(line.getBoundingClientRect().width).toBeGreaterThan(20)
    }
    await expect.element(page.getByText(/K, Duv|Beyond the scale/).first()).toBeVisible()
    workbench.addMark({ redStops: -0.5, blueStops: 0.4 }, null)
    workbench.addMark({ redStops: 0.6, blueStops: -0.5 }, null, 'weathered boards')
    await expect.element(pad().getByRole('slider', { name: 'weathered boards' })).toBeVisible()
    expect(await brokenRules()).toEqual([])
  })

  it('makes one gesture of a drag, moving the neutral as far as the hand', async () => {
    const { workbench, neutral, callsOf } = await openPlane()
    const before = neutral()
    drag(neutralDot().element(), 40, -20)
    expect(names(callsOf('beginGesture', 'changeValues', 'endGesture'))).toEqual([
      'beginGesture',
      'changeValues',
      'changeValues',
      'endGesture',
    ])
    const [red, blue] = [neutral().redStops - before.redStops, neutral().blueStops - before.blueStops]
    expect(red).toBeGreaterThan(0)
    expect(red / blue).toBeCloseTo(2, 2)
    expect(workbench.edit.getState().shown!.undoName).toBe('Neutral on the plane')
    // The slider above shows the same neutral.
    await expect
      .element(page.getByRole('slider', { name: 'Red to green', exact: true }))
      .toHaveAttribute('aria-valuenow', String(neutral().redStops))
  })

  it('leaves all as it was on Escape in the middle of a drag', async () => {
    const { neutral } = await openPlane()
    const before = neutral()
    const element = neutralDot().element() as HTMLElement
    drag(element, 40, -20, false)
    expect(neutral()).not.toEqual(before)
    element.focus()
    await key('{Escape}')
    expect(neutral()).toEqual(before)
  })

  it('moves the neutral by key, finely with shift, one gesture a key', async () => {
    const { neutral, callsOf } = await openPlane()
    ;(neutralDot().element() as HTMLElement).focus()
    await key('{ArrowRight>2}{/ArrowRight}')
    const plain = neutral().redStops / 2
    expect(plain).toBeGreaterThan(0)
    expect(names(callsOf('beginGesture', 'endGesture'))).toEqual(['beginGesture', 'endGesture'])
    await key('{Shift>}{ArrowUp}{/Shift}')
    expect(neutral().blueStops).toBeCloseTo(plain / 10, 6)
    await key('{ArrowLeft}{ArrowDown}')
    expect(neutral().redStops).toBeCloseTo(plain, 6)
    expect(neutral().blueStops).toBeLessThan(0)
  })

  it('puts the neutral where the empty pad is clicked, and moves with a drag there', async () => {
    const { neutral, callsOf } = await openPlane()
    const element = pad().element()
    const { x, y } = middleOf(element)
    pointer(element, 'pointerdown', x - 60, y)
    pointer(element, 'pointerup', x - 60, y)
    expect(callsOf('setValues')).toHaveLength(1)
    expect(neutral().redStops).toBeLessThan(0)
    await expect.poll(() => middleOf(neutralDot().element()).x).toBeCloseTo(x - 60, 0)
    drag(element, 30, 10)
    await expect.poll(() => middleOf(neutralDot().element()).x).toBeCloseTo(x - 30, 0)
    expect(callsOf('setValues')).toHaveLength(1)
  })

  it('zooms by button, wheel and key, and shows all points again', async () => {
    const { workbench } = await openPlane()
    workbench.addMark({ redStops: 9, blueStops: -7 }, null)
    const mark = () => pad().getByRole('slider', { name: 'A', exact: true })
    const apart = () => middleOf(mark().element()).x - middleOf(neutralDot().element()).x
    await expect.element(mark()).toBeInTheDocument()
    const before = apart()
    await page.getByRole('button', { name: 'Further away' }).click()
    expect(apart()).toBeCloseTo(before / 1.5, 0)
    ;(pad().element() as HTMLElement).focus()
    await key('+')
    expect(apart()).toBeCloseTo(before, 0)
    await page.getByRole('button', { name: 'Show all points' }).click()
    const { left, right } = pad().element().getBoundingClientRect()
    expect(middleOf(mark().element()).x).toBeLessThan(right)
    expect(middleOf(neutralDot().element()).x).toBeGreaterThan(left)
    const fitted = apart()
    const { x, y } = middleOf(pad().element())
    await new Promise((resolve) => setTimeout(resolve, 500))
    pad()
      .element()
      .dispatchEvent(new WheelEvent('wheel', { deltaY: -200, clientX: x, clientY: y, bubbles: true, cancelable: true }))
    await expect.poll(apart).toBeCloseTo(fitted * Math.exp(0.4), 0)
  })

  it('zooms between two fingers and places nothing', async () => {
    const { workbench, callsOf } = await openPlane()
    workbench.addMark({ redStops: 0.2, blueStops: 0 }, null)
    const mark = pad().getByRole('slider', { name: 'A', exact: true })
    await expect.element(mark).toBeVisible()
    const apart = () => middleOf(mark.element()).x - middleOf(neutralDot().element()).x
    const before = apart()
    const { x, y } = middleOf(pad().element())
    for (const [id, dx] of [
      [1, -20],
      [2, 20],
    ])
      pointer(pad().element(), 'pointerdown', x + dx, y + 60, id)
    for (const [id, dx] of [
      [1, -40],
      [2, 40],
    ])
      pointer(pad().element(), 'pointermove', x + dx, y + 60, id)
    for (const [id, dx] of [
      [1, -40],
      [2, 40],
    ])
      pointer(pad().element(), 'pointerup', x + dx, y + 60, id)
    await expect.poll(apart).toBeCloseTo(before * 2, 0)
    expect(callsOf('setValues')).toEqual([])
  })
})

describe('marks on the pad', () => {
  it('preview while they are dragged and keep where they were let go; Escape leaves them', async () => {
    const { workbench, marks, callsOf, neutral } = await openPlane()
    workbench.addMark({ redStops: 0.4, blueStops: 0.3 }, { x: 0.2, y: 0.3 })
    const mark = pad().getByRole('slider', { name: 'A', exact: true })
    await expect.element(mark).toBeVisible()
    const element = mark.element() as HTMLElement
    drag(element, 25, 25, false)
    const previewed = () => Number(workbench.session.getState().preview?.[0].values.redStops)
    await expect.poll(previewed).toBeGreaterThan(0.4)
    const dragged = previewed()
    element.focus()
    await key('{Escape}')
    expect(marks()[0]).toMatchObject({ gains: { redStops: 0.4, blueStops: 0.3 }, place: { x: 0.2, y: 0.3 } })
    drag(element, 25, 25)
    expect(callsOf('setMarkGains')).toHaveLength(1)
    expect(marks()[0].gains.redStops).toBeCloseTo(dragged, 6)
    expect(neutral().redStops).toBe(0)
    element.blur()
    await expect.poll(() => workbench.session.getState().preview).toBeNull()
  })

  it('become the neutral on Enter', async () => {
    const { workbench, neutral } = await openPlane()
    workbench.addMark({ redStops: 0.4, blueStops: 0.3 }, null, 'sand')
    const mark = pad().getByRole('slider', { name: 'sand' })
    await expect.element(mark).toBeVisible()
    ;(mark.element() as HTMLElement).focus()
    await key('{Enter}')
    expect(neutral()).toMatchObject({ redStops: 0.4, blueStops: 0.3 })
    expect(workbench.edit.getState().shown!.undoName).toBe('Neutral from sand')
  })
})

describe('the ground', () => {
  /** Colour of the ground at CSS pixels from the neutral's dot. */
  async function groundAt(dx: number, dy: number) {
    const canvas = document.querySelector<HTMLCanvasElement>('.plane-painting')!
    const box = canvas.getBoundingClientRect()
    const { x, y } = middleOf(neutralDot().element())
    await new Promise((resolve) => setTimeout(resolve, 300))
    const at = (css: number, from: number) => Math.round((css - from) * devicePixelRatio)
    const { data } = canvas.getContext('2d')!.getImageData(at(x + dx, box.left), at(y + dy, box.top), 1, 1)
    return [data[0], data[1], data[2]]
  }

  it('is what the reference patch becomes: grey at its own neutral, and as the chain turns it elsewhere', async () => {
    const { workbench, neutral, setMix } = await openPlane()
    workbench.addMark({ redStops: 0, blueStops: 0 }, null)
    await page.getByRole('button', { name: /Painted with/ }).click()
    await page.getByRole('option', { name: 'A', exact: true }).click()
    expect(neutral()).toMatchObject({ redStops: 0, blueStops: 0 })
    const grey = await groundAt(0, 0)
    expect(Math.max(...grey) - Math.min(...grey)).toBeLessThanOrEqual(3)
    const [red, , blue] = await groundAt(60, 0)
    expect(red).toBeGreaterThan(blue + 10)
    setMix(RED_BLUE_EXCHANGE)
    const [exchangedRed, , exchangedBlue] = await groundAt(60, 0)
    expect(exchangedBlue).toBeGreaterThan(exchangedRed + 10)
  })
})

describe('read-outs', () => {
  it('name a temperature only where there is one', async () => {
    const { workbench } = await openPlane()
    await expect.element(page.getByText('No kelvin: the file names no camera matrix.')).toBeVisible()
    // A camera that sees linear sRGB (IEC 61966-2-1): daylight needs no gains, and is 6,504 K.
    const cameraToXyz = [0.4124, 0.3576, 0.1805, 0.2126, 0.7152, 0.0722, 0.0193, 0.1192, 0.9505]
    const shown = workbench.session.getState().shown!
    workbench.session.setState({
      shown: { ...shown, facts: { ...shown.facts, cameraToXyz, daylightNeutral: [0, 0] } },
    })
    await expect.element(page.getByText(/^6,50\d K, Duv \+0\.003$/)).toBeVisible()
    workbench.adoptNeutral({ redStops: -2, blueStops: -2 }, 'Neutral')
    await expect.element(page.getByText(/^Beyond the scale by \d\.\d stop: /)).toBeVisible()
  })

  it('show the probe beside what is kept while probing', async () => {
    const { workbench } = await openPlane()
    workbench.setTool('probe')
    workbench.roam({ x: 0.5, y: 0.8 })
    const { redStops } = workbench.session.getState().probe!.neutral!
    const written = `red ${redStops < 0 ? '−' : '+'}${Math.abs(redStops).toFixed(2)}`
    await expect.element(page.getByText(written).first()).toBeVisible()
    await expect.element(page.getByText('Frame', { exact: true })).toBeVisible()
    expect(workbench.edit.getState().shown!.undoName).toBeNull()
  })
})
