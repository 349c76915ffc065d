// Files become roll entries, and entries decoded frames: one after the other in the decode worker, the one that a person
// waits for first. A file that cannot be opened keeps its reason in its entry; the others go on.
import { wordsOf } from '../text/thrown.ts'
import type { DecodeClient } from '../decode/decode-client.ts'
import { defaultChain } from '../edits/default-chain.ts'
import type { EditStore } from '../edits/edit-store.ts'
import type { Frame, FrameFacts, FrameReadings } from '../frame/frame.ts'
import type { ChainPlanes } from './chain-planes.ts'
import type { FrameCache } from './frame-cache.ts'
import type { Keeping } from './keeping.ts'
import { changeEntry, notify, type SessionStore, setEntryState } from './session-store.ts'
import type { SupplyStore } from './supply-store.ts'
import { thumbnailUrl } from './thumbnail.ts'

export interface OpenRoll {
  /** Adds an entry whose file comes later, and returns its id. */
  announce(fileName: string): string
  /** Gives an announced entry its file and decodes it in turn. */
  supply(id: string, file: File): Promise<void>
  /** The frame of an entry where it stands ready with its edit. */
  atHand(id: string): Frame | undefined
  /** The decoded frame of an entry, ahead of all that waits; null when it cannot be opened or has no file yet. */
  frame(id: string): Promise<Frame | null>
  /** Facts of a frame with the filter that the person stated. */
  factsOf(id: string, frame: Frame): FrameFacts
  /** The same of an entry that was decoded, whether its frame still stands ready or not; null before. */
  knownFacts(id: string): FrameFacts | null
  /** Makes the finished small picture of a decoded frame anew. */
  refreshPicture(id: string): Promise<void>
}

interface OpenRollContext {
  readonly session: SessionStore
  readonly edits: EditStore
  readonly frames: FrameCache
  readonly supplies: SupplyStore
  readonly planes: ChainPlanes
  readonly keeping: Keeping
  readonly decoder: DecodeClient
}

export function createOpenRoll(context: OpenRollContext): OpenRoll {
  const { session, edits, frames, supplies, planes, keeping, decoder } = context
  const files = new Map<string, File>()
  const facts = new Map<string, FrameFacts>()
  const jobs = new Map<string, Promise<Frame | null>>()
  const waiting: { id: string; start: () => void }[] = []
  let busy = false

  const entryOf = (id: string) => session.getState().entries.find((entry) => entry.id === id)
  const withStated = (id: string, found: FrameFacts): FrameFacts => {
    const stated = entryOf(id)?.statedFilterNm
    return stated === undefined ? found : { ...found, filterNm: stated }
  }
  const factsOf = (id: string, frame: Frame) => withStated(id, frame.facts)

  function showPicture(id: string, url: string): void {
    const before = entryOf(id)?.pictureUrl
    changeEntry(session, id, { pictureUrl: url })
    if (before) URL.revokeObjectURL(before)
  }

  async function refreshPicture(id: string): Promise<void> {
    const frame = frames.get(id)
    const chain = edits.history(id)?.chain
    if (!frame || !chain) return
    await planes.ready({ id, frame }, chain).catch(() => undefined)
    const order = { chain, facts: factsOf(id, frame), supplies: supplies.of(id) }
    try {
      showPicture(id, await thumbnailUrl(frame.overview, order))
    } catch (reason) {
      notify(session, 'problem', wordsOf(reason))
    }
  }

  /** Tells what has been read of a frame once it comes; the frame is at work long before. */
  async function tellReadings(id: string, coming: Promise<FrameReadings>): Promise<void> {
    try {
      const found = await coming
      session.setState(({ readings }) => ({ readings: { ...readings, [id]: found } }))
    } catch (reason) {
      notify(session, 'problem', wordsOf(reason))
    }
  }

  /** Gives a decoded frame the edit kept for its file, or its opening chain; a filter stated meanwhile counts more. */
  async function giveEdit(id: string, frame: Frame, announcedNm: number | null | undefined): Promise<void> {
    const { fingerprint, fileName } = frame
    const kept = await keeping.restore(fingerprint, fileName)
    if (kept?.filterNm !== undefined && entryOf(id)?.statedFilterNm === announcedNm)
      changeEntry(session, id, { statedFilterNm: kept.filterNm })
    edits.open(id, kept?.chain ?? defaultChain(factsOf(id, frame)))
    if (kept) edits.changeMarks(id, () => kept.marks)
    keeping.follow(id, fingerprint, fileName)
  }

  async function decode(id: string, file: File): Promise<Frame | null> {
    const announcedNm = entryOf(id)?.statedFilterNm
    setEntryState(session, id, { kind: 'working', doing: 'Decoding', fraction: null })
    try {
      const { frame, readings } = await decoder.decode(file, {
        onPreview: (jpeg) => {
          if (!edits.history(id)) showPicture(id, URL.createObjectURL(jpeg))
        },
      })
      void tellReadings(id, readings)
      frames.put(id, frame)
      facts.set(id, frame.facts)
      const { make, model } = frame.metadata
      changeEntry(session, id, { camera: [make, model].filter(Boolean).join(' ') })
      if (!edits.history(id)) await giveEdit(id, frame, announcedNm)
      setEntryState(session, id, { kind: 'ready' })
      void refreshPicture(id)
      return frame
    } catch (reason) {
      setEntryState(session, id, { kind: 'failed', reason: wordsOf(reason) })
      return null
    }
  }

  async function work(): Promise<void> {
    if (busy) return
    busy = true
    // A wanted frame may overtake while another is being decoded, so the line is read anew each time.
    for (let next = waiting.shift(); next; next = waiting.shift()) {
      next.start()
      await jobs.get(next.id)
    }
    busy = false
  }

  function enqueue(id: string, file: File, first: boolean): Promise<Frame | null> {
    const known = jobs.get(id)
    if (known) {
      const at = waiting.findIndex((job) => job.id === id)
      if (first && at > 0) waiting.unshift(...waiting.splice(at, 1))
      return known
    }
    const job = new Promise<Frame | null>((resolve) => {
      const start = () => void decode(id, file).then(resolve)
      waiting[first ? 'unshift' : 'push']({ id, start })
    }).finally(() => jobs.delete(id))
    jobs.set(id, job)
    void work()
    return job
  }

  return {
    announce(fileName) {
      const id = crypto.randomUUID()
      const entry = { id, fileName, state: { kind: 'waiting' }, pictureUrl: null, statedFilterNm: undefined } as const
      session.setState(({ entries }) => ({ entries: [...entries, entry] }))
      return id
    },
    async supply(id, file) {
      files.set(id, file)
      await enqueue(id, file, false)
    },
    atHand: (id) => (edits.history(id) ? frames.get(id) : undefined),
    async frame(id) {
      // Not before its edit is there: between decoding and that the database is asked.
      const kept = edits.history(id) && frames.get(id)
      const file = files.get(id)
      if (kept || !file) return kept ?? null
      return enqueue(id, file, true)
    },
    factsOf,
    knownFacts(id) {
      const found = facts.get(id)
      return found ? withStated(id, found) : null
    },
    refreshPicture,
  }
}
