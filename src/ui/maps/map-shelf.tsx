// The map shelf: named runs of mapping steps, each as the finished picture that it would make of the shown frame.
import { FileDown, FileUp, Plus } from 'lucide-react'
import { useMemo, useRef, useState } from 'react'

import { hasMapping, mappingOf } from '../../edits/colour-map.ts'
import { ownMaps as shipped } from '../../edits/own-maps.ts'
import { thumbnailSize } from '../board/finished-thumbnail.tsx'
import { useChain } from '../chain/selected-step.ts'
import { IconButton } from '../icon-button.tsx'
import { useSession, useWorkbench } from '../workbench-context.tsx'
import { MapCard } from './map-card.tsx'
import { shelfGroups } from './shelf-order.ts'
import { useShelfThumbnails } from './shelf-thumbnails.ts'

/** Room for a map's picture in CSS pixels: the column's width, and no more height than lets three stand in a small window. */
const mapBox = { width: 184, height: 124 }

export function MapShelf() {
  const workbench = useWorkbench()
  const chain = useChain()
  const own = useSession((session) => session.maps)
  const filterNm = useSession((session) => session.shown?.facts.filterNm)
  const aspect = useSession((session) => session.shown?.facts.aspect ?? 1)
  const size = useMemo(() => thumbnailSize(aspect, mapBox), [aspect])
  const groups = useMemo(() => shelfGroups(shipped, own, filterNm), [own, filterNm])
  const maps = useMemo(() => groups.flatMap((group) => group.maps), [groups])
  const pictureOf = useShelfThumbnails(maps, size.width)
  const present = useMemo(() => maps.find(({ steps }) => hasMapping(chain, steps))?.id, [maps, chain])
  const [savedId, setSavedId] = useState<string | null>(null)
  const shelf = useRef<HTMLDivElement>(null)
  const chooser = useRef<HTMLInputElement>(null)
  const hasSteps = mappingOf(chain).length > 0

  const focusMap = (from: HTMLElement, offset: number) => {
    const faces = [...(shelf.current?.querySelectorAll<HTMLElement>('.map-face') ?? [])]
    faces[faces.indexOf(from) + offset]?.focus()
  }

  return (
    <div ref={shelf} className="map-shelf">
      <header className="board-head">
        <h3>{maps.length} maps</h3>
        <IconButton
          label="Keep the frame’s mapping as a map"
          isDisabled={!hasSteps}
          onPress={() => setSavedId(workbench.saveMap(`Map ${own.length + 1}`))}
        >
          <Plus />
        </IconButton>
        <IconButton label="Import maps from a file" onPress={() => chooser.current?.click()}>
          <FileUp />
        </IconButton>
        <IconButton
          label="Export your maps to a file"
          isDisabled={own.length === 0}
          onPress={() => void workbench.exportMaps(own.map(({ id }) => id))}
        >
          <FileDown />
        </IconButton>
        <input
          ref={chooser}
          type="file"
          accept=".json,application/json"
          hidden
          aria-label="File with colour maps"
          onChange={(event) => {
            const [file] = event.currentTarget.files ?? []
            event.currentTarget.value = ''
            if (file) void workbench.importMaps(file)
          }}
        />
      </header>
      {groups.map((group) => (
        <section key={group.title} className="map-group" aria-label={group.title}>
          <h4>{group.title}</h4>
          {group.maps.length === 0 ? (
            <p className="board-hint">Plus keeps the mapping steps of this frame as a map of your own.</p>
          ) : (
            <ul className="map-list">
              {group.maps.map((map) => (
                <MapCard
                  key={map.id}
                  map={map}
                  picture={pictureOf(map.id)}
                  size={size}
                  isPresent={map.id === present}
                  isOwn={group.maps === own}
                  startsNamed={map.id === savedId}
                  showsFilter={group.isMixed}
                  onFocusMap={focusMap}
                />
              ))}
            </ul>
          )}
        </section>
      ))}
    </div>
  )
}
