// What the roll is called: after the one place that all of it came from.
import { expect, it } from 'vitest'

import type { RollEntry } from '../../src/workbench/session.ts'
import { createSessionStore, nameRoll } from '../../src/workbench/session-store.ts'

const entry: RollEntry = {
  id: 'a',
  fileName: 'heath-01.dng',
  state: { kind: 'waiting' },
  pictureUrl: null,
  statedFilterNm: undefined,
}

function nameAfter(...origins: (string | null)[]): string | null {
  const session = createSessionStore()
  for (const origin of origins) {
    nameRoll(session, origin)
    session.setState(({ entries }) => ({ entries: [...entries, entry] }))
  }
  return session.getState().rollName
}

it.each([
  [['Heath'], 'Heath'],
  [['Heath', 'Heath'], 'Heath'],
  [['Heath', null], null],
  [['Heath', 'Dunes'], null],
  [['Heath', 'Dunes', 'Dunes'], null],
  [[null, 'Heath'], null],
  [[null], null],
])('from %j it is %j', (origins, name) => expect(nameAfter(...origins)).toBe(name))
