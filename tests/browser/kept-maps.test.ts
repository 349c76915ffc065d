// Colour maps in the browser's own database: two windows add to one shelf, and neither forgets what the other put there.
import { beforeEach, expect, it, vi } from 'vitest'
import { createStore } from 'zustand/vanilla'

import { createEditStore } from '../../src/edits/edit-store.ts'
import { ownMaps } from '../../src/edits/own-maps.ts'
import { createKeptStore } from '../../src/roll/kept-store.ts'
import { mapsContent, writeMapFile } from '../../src/roll/map-file.ts'
import { createMapCommands } from '../../src/workbench/map-commands.ts'
import { createSessionStore } from '../../src/workbench/session-store.ts'

function openWindow() {
  const session = createSessionStore()
  const commands = createMapCommands({
    session,
    edits: createEditStore(),
    edit: createStore(() => ({ shown: null })),
    keeping: { tablesOf: async () => ({}), adoptTables() {} },
    store: createKeptStore(),
  })
  const add = (i: number) => commands.importMaps(new File([writeMapFile([ownMaps[i]], {})], 'one.maps.json'))
  return {
    ...commands,
    add,
    maps: () => session.getState().maps,
    names: () => session.getState().maps.map((map) => map.name),
  }
}
const named = (...indices: number[]) => indices.map((i) => ownMaps[i].name)

beforeEach(() => createKeptStore().keepMaps(mapsContent([])))

it('what one window keeps comes to the other, which then keeps both; maps that stood there stay the same', async () => {
  const [here, there] = [openWindow(), openWindow()]
  await here.add(0)
  await vi.waitFor(() => expect(there.names()).toEqual(named(0)))
  const [{ id }] = there.maps()
  await there.add(1)
  await vi.waitFor(() => expect(here.names()).toEqual(named(0, 1)))
  expect(there.maps()[0].id).toBe(id)
  here.removeMap(here.maps()[0].id)
  await vi.waitFor(() => expect(there.names()).toEqual(named(1)))
  const later = openWindow()
  await vi.waitFor(() => expect(later.names()).toEqual(named(1)))
})
