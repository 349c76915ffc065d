// Colour maps of one's own: taken from the shown frame, laid on it, kept between sessions, carried as files.
import type { StoreApi } from 'zustand/vanilla'
import { closed, wordsOf } from '../text/thrown.ts'
import { type ColourMap, mappingOf, withMapping } from '../edits/colour-map.ts'
import type { EditStore } from '../edits/edit-store.ts'
import { EditFault } from '../roll/edit.ts'
import type { KeptStore } from '../roll/kept-store.ts'
import { mapFileName, mapsContent, type NamelessMap, readMapFile, readMaps, writeMapFile } from '../roll/map-file.ts'
import { saveFile } from './save-file.ts'
import type { Keeping } from './keeping.ts'
import { listenToOtherWindows } from './other-windows.ts'
import { notify, type SessionStore } from './session-store.ts'
import type { ShownEdit, Workbench } from './workbench.ts'

export type MapCommands = Pick<
  Workbench,
  'applyMap' | 'saveMap' | 'renameMap' | 'removeMap' | 'exportMaps' | 'importMaps'
>

interface MapContext {
  readonly session: SessionStore
  readonly edit: StoreApi<{ readonly shown: ShownEdit | null }>
  readonly edits: EditStore
  readonly keeping: Pick<Keeping, 'tablesOf' | 'adoptTables'>
  readonly store: Pick<KeptStore, 'maps' | 'keepMaps'>
}

const withId = (map: NamelessMap): ColourMap => ({ ...map, id: crypto.randomUUID() })

/** What was read, where a map that stands already stays the one it is. */
function recognised(read: readonly NamelessMap[], standing: readonly ColourMap[]): ColourMap[] {
  const textOf = ({ name, words, filterNm, steps }: NamelessMap) => JSON.stringify([name, words, filterNm, steps])
  const left = new Map(standing.map((map) => [textOf(map), map]))
  return read.map((map) => {
    const same = left.get(textOf(map))
    left.delete(textOf(map))
    return same ?? withId(map)
  })
}

/**
 * Brings back what is kept; each change of a map is kept at once, with the tables it needs, and told to the other windows, whose
 * shelves follow: all maps are kept as one, so that a window that knew of fewer would forget the others.
 */
export function createMapCommands({ session, edit, edits, keeping, store }: MapContext): MapCommands {
  const own = () => session.getState().maps

  /** Tables that maps read. */
  const tablesOf = (maps: readonly ColourMap[]) => keeping.tablesOf(maps.flatMap(({ steps }) => steps))

  async function recall(withOwn: (read: readonly NamelessMap[]) => readonly ColourMap[]): Promise<void> {
    try {
      const content = await store.maps()
      if (content === undefined) return
      const { maps, tables } = await readMaps(content)
      keeping.adoptTables(tables)
      session.setState({ maps: withOwn(maps) })
    } catch (reason) {
      // Where the browser keeps nothing at all, that is said once, for edits.
      if (reason instanceof EditFault)
        notify(session, 'problem', `The colour maps kept here cannot be used, at ${reason.place}: ${reason.message}`)
    }
  }
  void recall((read) => [...read.map(withId), ...own()])
  const otherWindows = listenToOtherWindows('maps', () => void recall((read) => recognised(read, own())))

  async function keep(): Promise<void> {
    try {
      await store.keepMaps(mapsContent(own(), await tablesOf(own())))
      otherWindows.tellWritten('all')
    } catch {
      const words = 'This browser keeps no colour maps for the next time. Export those that should last.'
      notify(session, 'problem', words)
    }
  }
  function change(to: (maps: readonly ColourMap[]) => readonly ColourMap[]): void {
    session.setState(({ maps }) => ({ maps: to(maps) }))
    void keep()
  }

  return {
    applyMap({ name, steps }) {
      const id = session.getState().shown?.id
      if (id === undefined) return
      session.setState({ preview: null })
      edits.apply(id, `Colour map ${name}`, (chain) => withMapping(chain, steps))
      const chain = edits.history(id)!.chain
      const { selectedStepId } = session.getState()
      if (!chain.some((step) => step.id === selectedStepId)) session.setState({ selectedStepId: chain[0].id })
    },

    saveMap(name) {
      const { shown, entries } = session.getState()
      const chain = edit.getState().shown?.chain
      const steps = chain ? mappingOf(chain) : []
      if (!shown || steps.length === 0) return null
      const filterNm = entries.find(({ id }) => id === shown.id)?.statedFilterNm
      const map = withId({ name, words: '', filterNm, steps })
      change((maps) => [...maps, map])
      return map.id
    },

    renameMap(mapId, name) {
      const trimmed = name.trim()
      if (trimmed) change((maps) => maps.map((map) => (map.id === mapId ? { ...map, name: trimmed } : map)))
    },
    removeMap(mapId) {
      const at = own().findIndex(({ id }) => id === mapId)
      if (at < 0) return
      const map = own()[at]
      change((maps) => maps.filter(({ id }) => id !== mapId))
      notify(session, 'note', `“${map.name}” left the shelf.`, {
        words: 'Put it back',
        act: () => change((maps) => maps.toSpliced(at, 0, map)),
      })
    },

    async exportMaps(mapIds) {
      const maps = own().filter(({ id }) => mapIds.includes(id))
      if (maps.length === 0) return
      const content = tablesOf(maps).then((tables) => writeMapFile(maps, tables))
      const description = 'Colour maps'
      await saveFile(session, { name: mapFileName(maps), description, mediaType: 'application/json', content })
    },

    async importMaps(file) {
      try {
        const { maps, tables } = await readMapFile(await file.text(), file.name)
        keeping.adoptTables(tables)
        change((now) => [...now, ...maps.map(withId)])
        const words = maps.length === 1 ? '1 colour map of' : `${maps.length} colour maps of`
        const stand = maps.length === 1 ? 'stands' : 'stand'
        notify(session, 'note', `${words} “${file.name}” now ${stand} on the shelf.`)
      } catch (reason) {
        notify(session, 'problem', closed(wordsOf(reason)))
      }
    },
  }
}
