// The shown frame's planes follow its chain, a moment after it rests.
import { wordsOf } from '../text/thrown.ts'
import type { EditStore } from '../edits/edit-store.ts'
import type { ChainPlanes } from './chain-planes.ts'
import type { ShownPicture } from './picture.ts'
import { notify, type SessionStore } from './session-store.ts'

/** Rest of the chain before planes are made anew, in ms (our choice). */
const restMs = 120

interface FollowContext {
  readonly session: SessionStore
  readonly edits: EditStore
  readonly planes: ChainPlanes
  shown(): ShownPicture | null
}

export function followPlanes({ session, edits, planes, shown }: FollowContext): void {
  let waiting: ReturnType<typeof setTimeout> | undefined

  function follow(): void {
    const picture = shown()
    const chain = picture && edits.history(picture.id)?.chain
    if (!picture || !chain) return
    planes.ready(picture, chain).catch((reason: unknown) => {
      const words = wordsOf(reason)
      notify(session, 'problem', `Places in ${picture.frame.fileName} could not be found: ${words}`)
    })
  }
  edits.store.subscribe(({ frames }, before) => {
    const id = shown()?.id
    if (id === undefined || frames[id]?.chain === before.frames[id]?.chain) return
    clearTimeout(waiting)
    waiting = setTimeout(follow, restMs)
  })
  session.subscribe((now, before) => {
    if (now.shown !== before.shown) follow()
  })
}
