// The rooms of the left column, one line each; with more than one, tabs at the top change between them.
import type { ComponentType } from 'react'

import { Board } from '../board/board.tsx'
import { MapShelf } from '../maps/map-shelf.tsx'

export interface LeftRoom {
  readonly id: string
  readonly title: string
  /** Fills the column below its head. */
  readonly room: ComponentType
}

export const leftRooms: readonly LeftRoom[] = [
  { id: 'board', title: 'Board', room: Board },
  { id: 'maps', title: 'Map shelf', room: MapShelf },
]
