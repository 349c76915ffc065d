// One map on the shelf: the shown frame as it would be, its name, and what it does. Pointing at it or focusing it shows it large,
// pressing it lays it on the frame. A finger cannot point, so its first press shows and the next one lays it on.
import { useEffect, useId, useRef, useState, type KeyboardEvent } from 'react'

import { type ColourMap, withMapping } from '../../edits/colour-map.ts'
import type { Chain } from '../../edits/stack.ts'
import { FinishedThumbnail, type ThumbnailSize } from '../board/finished-thumbnail.tsx'
import { MarkMenu } from '../board/mark-menu.tsx'
import { MarkName } from '../board/mark-name.tsx'
import { useChain } from '../chain/selected-step.ts'
import { usePointing } from '../controls/use-pointing.ts'
import { pointAtMap } from '../screen-store.ts'
import { useWorkbench } from '../workbench-context.tsx'
import { filterText } from './shelf-order.ts'

interface MapCardProps {
  readonly map: ColourMap
  readonly picture: ImageData | null
  readonly size: ThumbnailSize
  /** The frame's mapping is this one. */
  readonly isPresent: boolean
  /** One's own maps can be named, exported and removed. */
  readonly isOwn: boolean
  readonly startsNamed: boolean
  /** Where the group does not say it. */
  readonly showsFilter: boolean
  readonly onFocusMap: (from: HTMLElement, offset: number) => void
}

export function MapCard({ map, picture, size, isPresent, isOwn, startsNamed, showsFilter, onFocusMap }: MapCardProps) {
  const workbench = useWorkbench()
  const chain = useChain()
  const [isNaming, setNaming] = useState(startsNamed)
  const face = useRef<HTMLButtonElement>(null)
  const previewed = useRef<Chain | null>(null)
  const touched = useRef(false)
  const textId = useId()
  const filter = showsFilter && map.filterNm !== undefined ? `${filterText(map.filterNm)}. ` : ''
  const line = `${filter}${map.words}`.trim()

  const point = () => {
    previewed.current = withMapping(chain, map.steps)
    pointAtMap(`colour map ${map.name}`, previewed.current)
    workbench.preview(previewed.current)
  }
  const isShown = () => previewed.current !== null && workbench.session.getState().preview === previewed.current
  const leave = () => {
    if (isShown()) workbench.preview(null)
  }
  const pointing = usePointing(point, leave)
  // A card that goes tells nobody that it was left.
  const gone = useRef(leave)
  useEffect(() => {
    gone.current = leave
  })
  useEffect(() => () => gone.current(), [])
  const remove = () => {
    for (const side of [-1, 1]) onFocusMap(face.current!, side)
    workbench.removeMap(map.id)
  }
  const press = (event: KeyboardEvent<HTMLElement>) => {
    const side = event.key === 'ArrowUp' ? -1 : event.key === 'ArrowDown' ? 1 : 0
    if (event.ctrlKey || event.metaKey || event.altKey) return
    if (event.key === 'Escape' && isShown()) leave()
    else if (event.key === 'F2' && isOwn) setNaming(true)
    else if (event.key === 'Delete' && isOwn) remove()
    else if (side === 0) return
    else onFocusMap(event.currentTarget, side)
    event.preventDefault()
    event.stopPropagation()
  }
  const actions = [
    { id: 'rename', label: 'Rename', act: () => setNaming(true) },
    { id: 'export', label: 'Export as a file', act: () => void workbench.exportMaps([map.id]) },
    { id: 'remove', label: 'Remove from the shelf', act: remove },
  ]

  return (
    <li className="map-card" data-present={isPresent || undefined}>
      <button
        ref={face}
        type="button"
        className="mark-face map-face"
        aria-label={`${map.name}${isPresent ? ', on the frame now' : ''}`}
        aria-describedby={line ? textId : undefined}
        {...pointing}
        onPointerDown={(event) => {
          touched.current = event.pointerType === 'touch' && !isShown()
        }}
        onFocus={(event) => event.currentTarget.matches(':focus-visible') && point()}
        onBlur={leave}
        onKeyDown={press}
        onClick={() => {
          if (touched.current) point()
          else workbench.applyMap(map)
          touched.current = false
        }}
      >
        <FinishedThumbnail picture={picture} size={size} />
      </button>
      <div className="map-line">
        {isOwn ? (
          <MarkName
            name={map.name}
            isEditing={isNaming}
            tabIndex={0}
            onEdit={() => setNaming(true)}
            onEnd={(typed, byKey) => {
              setNaming(false)
              if (typed !== null) workbench.renameMap(map.id, typed)
              if (byKey) face.current?.focus()
            }}
          />
        ) : (
          <span className="map-name">{map.name}</span>
        )}
        {isOwn && <MarkMenu label={`More for ${map.name}`} actions={actions} tabIndex={0} />}
      </div>
      {line && (
        <p id={textId} className="map-words">
          {line}
        </p>
      )}
    </li>
  )
}
