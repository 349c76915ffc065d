// What becomes of the file that the browser's dialog made where the export is given up or fails before it begins.
import { expect, it, onTestFinished } from 'vitest'

import { createEditStore } from '../../src/edits/edit-store.ts'
import { defaultChain } from '../../src/edits/default-chain.ts'
import type { Frame } from '../../src/frame/frame.ts'
import type { ChainPlanes } from '../../src/workbench/chain-planes.ts'
import { createExportCommand } from '../../src/workbench/export-command.ts'
import { createSessionStore } from '../../src/workbench/session-store.ts'
import { createSupplyStore } from '../../src/workbench/supply-store.ts'
import { createTaskList } from '../../src/workbench/tasks.ts'
import { mosaicFacts as facts, syntheticMosaic } from '../support/synthetic-mosaic.ts'

const settings = { format: 'tiff16', space: 'srgb', quality: 92, keepLocation: false } as const

/** An export into a file of the page's own folder, while planes are made as `ready` says. */
async function exporting(fileName: string, ready: ChainPlanes['ready']) {
  const folder = await navigator.storage.getDirectory()
  const picker = window.showSaveFilePicker
  window.showSaveFilePicker = () => folder.getFileHandle(`${fileName}.tif`, { create: true })
  onTestFinished(() => void (window.showSaveFilePicker = picker))
  const session = createSessionStore()
  const edits = createEditStore()
  edits.open('one', defaultChain(facts))
  const frame = { sensor: syntheticMosaic(60, 40), metadata: {}, fileName: `${fileName}.dng` } as unknown as Frame
  const tasks = createTaskList(session)
  const shown = () => ({ id: 'one', frame, facts })
  const run = createExportCommand({ session, edits, tasks, supplies: createSupplyStore(), planes: { ready }, shown })
  const hasFile = () =>
    folder.getFileHandle(`${fileName}.tif`).then(
      () => true,
      () => false,
    )
  return { session, tasks, hasFile, done: run(settings) }
}

it('given up while planes are being made, it ends at once and leaves no file', async () => {
  const { session, tasks, hasFile, done } = await exporting('given-up', () => new Promise(() => {}))
  await expect.poll(() => session.getState().tasks).toHaveLength(1)
  tasks.cancel(session.getState().tasks[0].id)
  await done
  expect(session.getState()).toMatchObject({ tasks: [], notices: [] })
  expect(await hasFile()).toBe(false)
})

it('where planes cannot be made, it says so and leaves no file', async () => {
  const { session, hasFile, done } = await exporting('failing', () => Promise.reject(new Error('No room')))
  await done
  expect(session.getState().notices).toMatchObject([
    { tone: 'problem', text: '“failing.tif” was not exported: No room.' },
  ])
  expect(await hasFile()).toBe(false)
})
