// Where handed-over files go: names decide, and in a folder only frames count.
import { expect, it } from 'vitest'

import { createHandOver } from '../../src/workbench/hand-over.ts'

function receivers() {
  const got: string[] = []
  const take = (what: string) => async (file: File) => void got.push(`${what} ${file.name}`)
  const openFrames = async (files: readonly File[], folderName?: string) =>
    void got.push(`frames ${files.map((file) => file.name).join(' ')}${folderName ? ` of ${folderName}` : ''}`)
  const openFiles = createHandOver({
    openFrames,
    loadEdit: take('edit'),
    loadTable: take('table'),
    importMaps: take('maps'),
  })
  return { got, openFiles }
}
const fileNamed = (name: string) => new File(['x'], name)

it('gives edit files to the shown frame and the rest to the roll, each once', async () => {
  const { got, openFiles } = receivers()
  await openFiles(['pond-1.dng', 'pond-1.edit.JSON', 'heath.cube', 'pond-2.jpg'].map(fileNamed))
  expect(got).toEqual(['edit pond-1.edit.JSON', 'table heath.cube', 'frames pond-1.dng pond-2.jpg'])
})

it('opens no roll where only an edit came', async () => {
  const { got, openFiles } = receivers()
  await openFiles([fileNamed('walk.json')])
  expect(got).toEqual(['edit walk.json'])
})

it('leaves what lies beside frames in a folder alone', async () => {
  const { got, openFiles } = receivers()
  await openFiles(['pond-1.dng', 'pond-1.edit.json'].map(fileNamed), 'pond')
  expect(got).toEqual(['frames pond-1.dng pond-1.edit.json of pond'])
})
