// The board on screen: keeping, naming, ordering, blending and adopting marks; what is pointed at shows in the picture.
import { describe, expect, it } from 'vitest'
import { page, userEvent } from 'vitest/browser'

import { withProbe } from '../../src/edits/stack.ts'
import { brokenRules, key, openBench } from '../support/open-screen.tsx'

const board = () => page.getByRole('complementary', { name: 'Board' })
const face = (name: string) => board().getByRole('button', { name: new RegExp(`^${name}: red`) })
const more = async (name: string, action: string) => {
  await board()
    .getByRole('button', { name: `More for ${name}` })
    .click()
  await page.getByRole('menuitem', { name: action }).click()
}

async function openBoard() {
  const bench = await openBench()
  bench.workbench.addMark({ redStops: -1, blueStops: 0.5 }, { x: 0.2, y: 0.3 })
  bench.workbench.addMark({ redStops: 1, blueStops: -0.5 }, { x: 0.7, y: 0.6 })
  bench.workbench.addMark({ redStops: 0.25, blueStops: 2 }, null, 'gravel')
  bench.workbench.calls.length = 0
  const marks = () => bench.workbench.edit.getState().shown!.marks
  await expect.element(face('gravel')).toBeVisible()
  return { ...bench, marks, names: () => marks().map(({ name }) => name) }
}

describe('keeping', () => {
  it('keeps marks from the probe by key and by shift with Enter or a click, and changes nothing', async () => {
    const { workbench } = await openBench()
    const { chain } = workbench.edit.getState().shown!
    await page.getByRole('button', { name: 'Probe', exact: true }).click()
    await key('{ArrowRight}m{Shift>}{Enter}{/Shift}')
    const area = page.getByRole('application', { name: /^Picture of/ })
    await userEvent.hover(area, { position: { x: 300, y: 380 } })
    await userEvent.keyboard('{Shift>}')
    await userEvent.click(area, { position: { x: 300, y: 380 } })
    await userEvent.keyboard('{/Shift}')
    const { chain: after, marks } = workbench.edit.getState().shown!
    expect(marks.map(({ name }) => name)).toEqual(['A', 'B', 'C'])
    expect(marks[0].gains).toEqual(marks[1].gains)
    expect(marks[2].gains).not.toEqual(marks[0].gains)
    expect(after).toBe(chain)
    expect(workbench.session.getState().tool).toBe('probe')
  })

  it('keeps the frame’s own neutral where no probe is up', async () => {
    const { workbench } = await openBench()
    await page.getByRole('button', { name: 'Keep the frame’s neutral as a mark' }).click()
    const [{ gains, place }] = workbench.edit.getState().shown!.marks
    expect({ gains, place }).toEqual({ gains: { redStops: 0, blueStops: 0 }, place: null })
    await expect.element(board().getByRole('button', { name: /the frame’s neutral$/ })).toBeVisible()
  })
})

describe('marks', () => {
  it('shows what is pointed at or focused in the picture, and leaves it again', async () => {
    const { workbench, marks } = await openBoard()
    const preview = () => workbench.session.getState().preview
    const { chain } = workbench.edit.getState().shown!
    await userEvent.hover(face('B'))
    await expect.poll(preview).toEqual(withProbe(chain, marks()[1].gains))
    await userEvent.hover(page.getByRole('heading', { name: 'Neutral' }))
    await expect.poll(preview).toBe(null)
    face('A').element().focus()
    await expect.poll(preview).toEqual(withProbe(chain, marks()[0].gains))
    await key('{ArrowDown}{ArrowDown}')
    await expect.poll(preview).toEqual(withProbe(chain, marks()[2].gains))
    await key('{Escape}')
    await expect.poll(preview).toBe(null)
  })

  it('adopts by click and by Enter, under a name that undo shows', async () => {
    const { stepOf, marks, workbench } = await openBoard()
    await face('B').click()
    expect(stepOf('neutral').values).toMatchObject(marks()[1].gains)
    await expect.element(page.getByRole('button', { name: 'Undo: Neutral of B' })).toBeVisible()
    face('gravel').element().focus()
    await key('{Enter}')
    expect(stepOf('neutral').values).toMatchObject(marks()[2].gains)
    await key('{Control>}z{/Control}')
    expect(stepOf('neutral').values).toMatchObject(marks()[1].gains)
    await expect.poll(() => workbench.session.getState().preview).toBe(null)
  })

  it('names in place by pointer, by F2 and by menu; Escape keeps the old name', async () => {
    const { names } = await openBoard()
    await board().getByRole('button', { name: 'A: rename' }).click()
    await key('reeds{Enter}')
    expect(names()[0]).toBe('reeds')
    expect(document.activeElement).toBe(face('reeds').element())
    await key('{F2}other{Escape}')
    expect(names()[0]).toBe('reeds')
    await more('B', 'Rename')
    await expect.element(board().getByRole('textbox', { name: 'Name of B' })).toHaveFocus()
    await key('boards{Enter}')
    expect(names()).toEqual(['reeds', 'boards', 'gravel'])
  })

  it('moves by key, menu and dragging, pins to the front and removes', async () => {
    const { names } = await openBoard()
    face('A').element().focus()
    await key('{Shift>}{ArrowDown}{/Shift}')
    expect(names()).toEqual(['B', 'A', 'gravel'])
    expect(document.activeElement).toBe(face('A').element())
    await more('A', 'Move up')
    expect(names()).toEqual(['A', 'B', 'gravel'])
    await userEvent.dragAndDrop(face('A'), face('B'))
    expect(names()).toEqual(['B', 'A', 'gravel'])
    await more('gravel', 'Pin to the front')
    expect(names()).toEqual(['gravel', 'B', 'A'])
    face('B').element().focus()
    await key('{Delete}')
    expect(names()).toEqual(['gravel', 'A'])
    expect(document.activeElement).toBe(face('A').element())
    await expect.element(page.getByText('Mark “B” left the board.')).toBeVisible()
    await page.getByRole('button', { name: 'Put it back' }).click()
    expect(names()).toEqual(['gravel', 'B', 'A'])
    await expect.element(page.getByText('Mark “B” left the board.')).not.toBeInTheDocument()
    await more('B', 'Remove')
    expect(names()).toEqual(['gravel', 'A'])
  })

  it('blends two in stops, shows the blend and keeps it', async () => {
    const { workbench, marks } = await openBoard()
    await board().getByRole('checkbox', { name: 'Blend A' }).click()
    await expect.element(page.getByText('Choose a second mark to blend with A.')).toBeVisible()
    await board().getByRole('checkbox', { name: 'Blend B' }).click()
    await expect.element(page.getByRole('heading', { name: 'Blend' })).toBeVisible()
    // A lamp that was pressed takes no letters.
    await key('d')
    expect(workbench.session.getState().divide).toBe(0.5)
    await key('d')
    // Ticked but not pointed at: the picture stays the frame's own.
    await userEvent.hover(page.getByRole('heading', { name: 'Neutral', exact: true }))
    await expect.poll(() => workbench.session.getState().preview).toBe(null)
    const shareOfB = board().getByRole('slider', { name: 'Share of B' })
    shareOfB.element().focus()
    await key('{PageUp}{PageUp}{ArrowRight}{ArrowRight}{ArrowRight}{ArrowRight}{ArrowRight}')
    // A and B lie opposite each other about 0, so three quarters of the way is half of B.
    const half = { redStops: 0.5, blueStops: -0.25 }
    const neutral = () => workbench.session.getState().preview?.find(({ operation }) => operation === 'neutral')
    await expect.poll(() => neutral()?.values).toMatchObject(half)
    await expect.element(page.getByText('Preview: blend A 25 : 75 B')).toBeVisible()
    face('A').element().focus()
    await expect.poll(() => neutral()?.values).toMatchObject(marks()[0].gains)
    await expect.element(page.getByText('Preview: mark A')).toBeVisible()
    await key('{Escape}')
    await userEvent.hover(shareOfB)
    await expect.poll(() => neutral()?.values).toMatchObject(half)
    await userEvent.hover(page.getByRole('heading', { name: 'Neutral', exact: true }))
    await expect.poll(() => workbench.session.getState().preview).toBe(null)
    expect(page.getByText(/^Preview/).query()).toBe(null)
    await page.getByRole('button', { name: 'Keep as a mark' }).click()
    expect(marks().at(-1)).toMatchObject({ gains: half, place: null, name: 'A 25 : 75 B' })
    // The pointer may now stand on a mark that has taken the blend's place.
    await userEvent.hover(page.getByRole('heading', { name: 'Neutral', exact: true }))
    await expect.poll(() => workbench.session.getState().preview).toBe(null)
  })

  it('asks for pictures of all marks at once under the chain as it is', async () => {
    const { callsOf, workbench, marks } = await openBoard()
    const asked = () => callsOf('thumbnails').map(([, chains]) => chains)
    const wanted = () => marks().map(({ gains }) => withProbe(workbench.edit.getState().shown!.chain, gains))
    await expect.poll(asked).toContainEqual(wanted())
    const turn = workbench.edit.getState().shown!.chain.find(({ operation }) => operation === 'hueTurn')!
    for (let angleDeg = 1; angleDeg <= 40; angleDeg++) workbench.setValues(turn.id, { angleDeg }, 'Angle')
    await expect.poll(asked).toContainEqual(wanted())
    const ofAll = () => asked().filter((chains) => (chains as unknown[]).length === marks().length).length
    expect(ofAll()).toBeLessThan(20)
    // Tables that the chain reads are other ones.
    const before = ofAll()
    workbench.session.setState(({ supplyChanges }) => ({ supplyChanges: supplyChanges + 1 }))
    await expect.poll(ofAll).toBeGreaterThan(before)
  })
})

const offers = [
  ['place 0', 'bright, even', 0.5],
  ['place 1', 'between foliage and sky', 0.75],
  ['place 2', 'dark', 1],
  ['foliage', 'foliage', 1.5],
].map(([id, reason, redStops]) => ({
  id: String(id),
  reason: String(reason),
  gains: { redStops: Number(redStops), blueStops: -1 },
  place: { x: 0.5, y: 0.25 },
  isGrey: id !== 'foliage',
}))
const averages = ['plain mean', 'grey world', 'shades of grey'].map((id) => ({
  id,
  reason: id,
  gains: { redStops: 0.25, blueStops: -1 },
  place: null,
  isGrey: false,
}))

describe('suggestions', () => {
  it('shows the best with their reasons, previews, adopts and keeps them as marks', async () => {
    const { workbench, stepOf } = await openBench()
    await expect.element(page.getByText('Looking for suggestions')).toBeVisible()
    workbench.session.setState({ offers: { offers, averages, colourLeft: true } })
    const suggestion = (words: string) => board().getByRole('button', { name: new RegExp(`^${words}; red`) })
    await userEvent.hover(suggestion('Bright, even'))
    const chain = () => workbench.edit.getState().shown!.chain
    await expect.poll(() => workbench.session.getState().preview).toEqual(withProbe(chain(), offers[0].gains))
    await board().getByRole('button', { name: 'Keep as a mark: Foliage' }).click()
    const [mark] = workbench.edit.getState().shown!.marks
    expect(mark).toMatchObject({ gains: offers[3].gains, place: offers[3].place, name: 'A' })
    suggestion('Bright, even').element().focus()
    await key('{ArrowDown}{Enter}')
    expect(stepOf('neutral').values).toMatchObject(offers[1].gains)
    await expect.element(page.getByRole('button', { name: 'Undo: Suggested neutral' })).toBeVisible()
    expect(suggestion('Grey world').query()).toBe(null)
    await board().getByRole('button', { name: '3 more' }).click()
    await expect.element(board().getByRole('heading', { name: 'Averages of the whole frame' })).toBeVisible()
    suggestion('Foliage').element().focus()
    await key('{ArrowDown}{ArrowDown}')
    expect(document.activeElement).toBe(suggestion('Grey world').element())
    expect(await brokenRules()).toEqual([])
  })

  it('says where no colour is left, and has the averages there too', async () => {
    const { workbench } = await openBench()
    workbench.session.setState({ offers: { offers: offers.slice(-1), averages, colourLeft: false } })
    await expect.element(page.getByText(/^No colour is left in this frame/)).toBeVisible()
    await board().getByRole('button', { name: '3 more' }).click()
    await expect.element(board().getByText('Shades of grey')).toBeVisible()
  })
})

describe('column', () => {
  it('folds away and comes back', async () => {
    await openBoard()
    await page.getByRole('button', { name: 'Fold this column away' }).click()
    expect(document.querySelector('.mark')).toBe(null)
    await page.getByRole('button', { name: 'Unfold: Board' }).click()
    await expect.element(face('A')).toBeVisible()
  })

  it('breaks no rule of accessibility, with a name being edited and a blend open', async () => {
    await openBoard()
    await board().getByRole('checkbox', { name: 'Blend A' }).click()
    await board().getByRole('checkbox', { name: 'Blend B' }).click()
    await board().getByRole('button', { name: 'gravel: rename' }).click()
    expect(await brokenRules()).toEqual([])
  })
})
