// The screen as a whole: ways in, accessibility, messages, work, dialogs.
import { describe, expect, it } from 'vitest'
import { page } from 'vitest/browser'

import { brokenRules, key, openBench, openScreen } from '../support/open-screen.tsx'

describe('start screen', () => {
  it('breaks no accessibility rule', async () => {
    await openScreen()
    expect(await brokenRules()).toEqual([])
  })

  it('hands dropped files to the workbench', async () => {
    const { callsOf } = await openScreen()
    const dataTransfer = new DataTransfer()
    dataTransfer.items.add(new File(['x'], 'meadow.dng'))
    dispatchEvent(new DragEvent('dragover', { dataTransfer, cancelable: true }))
    await expect.element(page.getByText('Drop to open')).toBeVisible()
    dispatchEvent(new DragEvent('drop', { dataTransfer, cancelable: true }))
    await expect.poll(() => callsOf('openFiles').length).toBe(1)
    expect((callsOf('openFiles')[0][1] as File[]).map((file) => file.name)).toEqual(['meadow.dng'])
  })
})

describe('bench', () => {
  it('breaks no accessibility rule, idle and with probe, work and messages', async () => {
    const { workbench } = await openBench()
    expect(await brokenRules()).toEqual([])
    await key('n')
    workbench.session.setState({
      tasks: [{ id: 'a', label: 'Reading', fraction: 0.4, secondsLeft: 12, cancellable: true }],
      notices: [{ id: 'b', tone: 'problem', text: 'meadow-06.dng could not be opened.' }],
    })
    await page.getByRole('button', { name: 'Channel mix' }).click()
    await expect.element(page.getByText('about 10 s left')).toBeVisible()
    expect(await brokenRules()).toEqual([])
  })

  it('tells what the machine cannot do in the help, not among the warnings of the frame', async () => {
    const { workbench } = await openBench()
    const graphicsLimit = 'This machine draws without a graphics card.'
    workbench.session.setState(({ shown }) => ({ graphicsLimit, shown: { ...shown!, warnings: ['A pixel is dead.'] } }))
    await expect.element(page.getByText('A pixel is dead.')).toBeVisible()
    await expect.element(page.getByText(graphicsLimit)).not.toBeInTheDocument()
    await key('?')
    await expect.element(page.getByRole('dialog').getByText(graphicsLimit)).toBeInTheDocument()
  })

  it('states the filter', async () => {
    const { callsOf } = await openBench()
    await page.getByRole('button', { name: 'filter 590 nm' }).click()
    await page.getByRole('option', { name: '720 nm' }).click()
    expect(callsOf('stateFilter')).toEqual([['stateFilter', 'frame-1', 720]])
  })

  it('cancels work and dismisses messages', async () => {
    const { callsOf, workbench } = await openBench()
    workbench.session.setState({
      tasks: [{ id: 'a', label: 'Exporting', fraction: null, secondsLeft: null, cancellable: true }],
      notices: [{ id: 'b', tone: 'note', text: 'Saved.' }],
    })
    await page.getByRole('button', { name: 'Cancel: Exporting' }).click()
    await page.getByRole('button', { name: 'Dismiss' }).click()
    expect(callsOf('cancelTask', 'dismissNotice')).toEqual([
      ['cancelTask', 'a'],
      ['dismissNotice', 'b'],
    ])
  })

  it('shows the newest message, earlier ones when asked, and dismisses all', async () => {
    const { callsOf, workbench } = await openBench()
    const texts = ['First.', 'Second.', 'Third.']
    workbench.session.setState({ notices: texts.map((text) => ({ id: text, tone: 'problem', text })) })
    const messages = page.getByRole('log', { name: 'Messages' })
    await expect.element(messages.getByText('Third.')).toBeVisible()
    await expect.element(messages.getByText('First.')).not.toBeInTheDocument()
    await page.getByRole('button', { name: '2 earlier' }).click()
    await expect.element(messages.getByText('First.')).toBeVisible()
    expect(await brokenRules()).toEqual([])
    await page.getByRole('button', { name: 'Dismiss all' }).click()
    expect(callsOf('dismissNotice').map(([, id]) => id)).toEqual(texts)
  })
})

describe('dialogs', () => {
  it('export what was chosen and break no accessibility rule', async () => {
    const { callsOf } = await openBench()
    await page.getByRole('button', { name: 'Export', exact: true }).click()
    expect(await brokenRules()).toEqual([])
    await page.getByRole('button', { name: /Format/ }).click()
    await page.getByRole('option', { name: 'JPEG' }).click()
    await expect.element(page.getByText('meadow-01.jpg')).toBeVisible()
    await page.getByRole('dialog').getByRole('button', { name: 'Export', exact: true }).click()
    expect(callsOf('exportShown')).toEqual([
      ['exportShown', { format: 'jpeg', space: 'srgb', quality: 92, keepLocation: false }],
    ])
  })

  it('help opens with ?, and single keys can be switched off', async () => {
    const { workbench } = await openBench()
    await key('?')
    await expect.element(page.getByRole('dialog', { name: 'Help and keys' })).toBeVisible()
    expect(await brokenRules()).toEqual([])
    await page.getByText('Single keys act').click()
    await key('{Escape}')
    await expect.element(page.getByRole('dialog')).not.toBeInTheDocument()
    await key('n')
    expect(workbench.session.getState().tool).toBe('pan')
    localStorage.clear()
  })
})
