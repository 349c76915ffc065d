// What a step shows beside its controls: by operation, one line each. `above` stands before the controls, `below` after them.
import type { ComponentType } from 'react'

import { InfraredRoom } from './infrared-room.tsx'
import { OpeningMixNote } from './opening-mix-note.tsx'
import { LightPicks, ShadePlace } from '../lights/second-light-rooms.tsx'
import { ForgetTable, TableRoom } from '../tables/table-room.tsx'
import { CurvePointsRoom } from '../tones/curve-points-room.tsx'
import { GreyResponse } from '../tones/grey-response.tsx'
import { ToneLines } from '../tones/tone-lines.tsx'
import { NeutralRoom } from '../neutral-plane/neutral-room.tsx'
import type { StepRoomProps } from './step-room-props.ts'
import { InversionShortcut, ProbeShortcut } from './step-shortcuts.tsx'
import { StrengthRoom } from './strength-room.tsx'
import { VisibleRoom } from './visible-room.tsx'

interface StepRooms {
  readonly above?: ComponentType<StepRoomProps>
  readonly below?: ComponentType<StepRoomProps>
}

export const stepRooms: Readonly<Record<string, StepRooms>> = {
  neutral: { above: ProbeShortcut, below: NeutralRoom },
  secondLight: { above: LightPicks, below: ShadePlace },
  visibleMatrix: { below: VisibleRoom },
  infraredSplit: { above: InfraredRoom },
  colourLut: { above: TableRoom, below: ForgetTable },
  channelMix: { below: OpeningMixNote },
  hueTurn: { above: InversionShortcut },
  colourStrength: { below: StrengthRoom },
  tonalBalance: { above: ToneLines },
  toneCurve: { below: CurvePointsRoom },
  blackAndWhite: { above: GreyResponse },
}
