// The left column: one room at a time below a head with the rooms' names. Folded it is a strip, and the picture has its place.
import { PanelLeftClose, PanelLeftOpen } from 'lucide-react'
import { useRef, useState, type KeyboardEvent } from 'react'
import { useStore } from 'zustand'

import { IconButton } from '../icon-button.tsx'
import { screen, setLeftFolded } from '../screen-store.ts'
import { type LeftRoom, leftRooms } from './left-rooms.ts'

interface RoomTabsProps {
  readonly rooms: readonly LeftRoom[]
  readonly shown: LeftRoom
  readonly onChoose: (room: LeftRoom) => void
}

/** One room needs no tabs: its name is the title. */
function RoomTabs({ rooms, shown, onChoose }: RoomTabsProps) {
  const list = useRef<HTMLDivElement>(null)
  if (rooms.length === 1) return <h2 className="left-title">{shown.title}</h2>
  const press = (event: KeyboardEvent) => {
    const side = event.key === 'ArrowLeft' ? -1 : event.key === 'ArrowRight' ? 1 : 0
    const index = rooms.indexOf(shown) + side
    if (side === 0 || !rooms[index]) return
    event.preventDefault()
    event.stopPropagation()
    onChoose(rooms[index])
    list.current?.querySelectorAll('button')[index].focus()
  }
  return (
    <div ref={list} className="left-tabs" role="tablist" aria-label="Rooms of the left column">
      {rooms.map((room) => (
        <button
          key={room.id}
          type="button"
          role="tab"
          id={`left-tab-${room.id}`}
          aria-selected={room === shown}
          aria-controls="left-room"
          tabIndex={room === shown ? 0 : -1}
          onClick={() => onChoose(room)}
          onKeyDown={press}
        >
          {room.title}
        </button>
      ))}
    </div>
  )
}

interface LeftColumnProps {
  readonly rooms?: readonly LeftRoom[]
  /** A room begins anew with another key: what is chosen in it belongs to one frame. */
  readonly roomKey: string | null
}

export function LeftColumn({ rooms = leftRooms, roomKey }: LeftColumnProps) {
  const folded = useStore(screen, (state) => state.leftFolded)
  const [chosen, setChosen] = useState(rooms[0].id)
  const shown = rooms.find(({ id }) => id === chosen) ?? rooms[0]
  const { room: Room } = shown
  if (folded)
    return (
      <aside className="left left-strip" aria-label={shown.title}>
        <IconButton label={`Unfold: ${shown.title}`} onPress={() => setLeftFolded(false)}>
          <PanelLeftOpen />
        </IconButton>
      </aside>
    )
  return (
    <aside className="left" aria-label={shown.title}>
      <header className="left-head">
        <RoomTabs rooms={rooms} shown={shown} onChoose={({ id }) => setChosen(id)} />
        <IconButton label="Fold this column away" onPress={() => setLeftFolded(true)}>
          <PanelLeftClose />
        </IconButton>
      </header>
      <div
        id="left-room"
        className="left-room"
        role={rooms.length > 1 ? 'tabpanel' : undefined}
        aria-labelledby={rooms.length > 1 ? `left-tab-${shown.id}` : undefined}
      >
        {rooms.length > 1 && <h2 className="visually-hidden">{shown.title}</h2>}
        <Room key={`${shown.id} ${roomKey}`} />
      </div>
    </aside>
  )
}
