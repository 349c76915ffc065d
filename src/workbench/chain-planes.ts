// Keeps the planes that chains read in step with the chains: made in a worker when their orders change, the old one standing
// until the new one is there. What must not lack any (an export, a small picture) waits for them.
import type { Remote } from 'comlink'
import type { Frame } from '../frame/frame.ts'
import type { Table } from '../operations/define.ts'
import type { Chain } from '../operations/step.ts'
import { planesOfChain, planeSource, type PlaneOrder } from '../pipeline/planes-of-chain.ts'
import { lastingWorker } from './lasting-worker.ts'
import type { PlaneWorker } from './plane-worker.ts'
import type { SupplyStore } from './supply-store.ts'
import type { TaskList } from './tasks.ts'

/** Work longer than this is shown, in ms: a stroke of the brush should not flicker (our choice). */
const shownAfterMs = 500

interface PlanedFrame {
  readonly id: string
  readonly frame: Frame
}

export interface ChainPlanes {
  /** Makes what the chain reads and the frame lacks. Resolves when all is there; rejects with an Error when the worker fails. */
  ready(frame: PlanedFrame, chain: Chain): Promise<void>
}

const startPlaneWorker = () => new Worker(new URL('./plane-worker.ts', import.meta.url), { type: 'module' })

/** `startWorker` is another in tests. */
export function createChainPlanes(supplies: SupplyStore, tasks: TaskList, startWorker = startPlaneWorker): ChainPlanes {
  /** The latest order of each plane of each frame, as text, and when it is done. */
  const jobs = new Map<string, { readonly order: string; readonly done: Promise<void> }>()
  const inWorker = lastingWorker<PlaneWorker>(startWorker, 'The browser gave up on it. Reload the page and try again.')
  /** What a worker was given last to make planes from. */
  let taken: { readonly remote: Remote<PlaneWorker>; readonly frame: Frame } | null = null

  async function giveSource(remote: Remote<PlaneWorker>, frame: Frame): Promise<void> {
    if (taken?.remote === remote && taken.frame === frame) return
    const giving = { remote, frame }
    taken = giving
    try {
      await remote.take(planeSource(frame))
    } catch (reason) {
      if (taken === giving) taken = null
      throw reason
    }
  }
  /** Messages arrive in order: the source is there before the order that needs it, and nothing comes in between. */
  function make({ frame }: PlanedFrame, order: PlaneOrder): Promise<Table | null> {
    return inWorker(async (remote) => (await Promise.all([giveSource(remote, frame), remote.make(order)]))[1])
  }

  async function work(frame: PlanedFrame, slot: string, order: PlaneOrder, text: string): Promise<void> {
    let end = () => {}
    const timer = setTimeout(() => {
      end = tasks.begin(order.making?.kind === 'material' ? 'Telling materials apart' : 'Finding the shade').end
    }, shownAfterMs)
    try {
      const table = await make(frame, order)
      if (jobs.get(slot)?.order === text) supplies.put(frame.id, order.name, table)
    } catch (reason) {
      if (jobs.get(slot)?.order === text) jobs.delete(slot)
      throw reason
    } finally {
      clearTimeout(timer)
      end()
    }
  }

  return {
    async ready(frame, chain) {
      await Promise.all(
        planesOfChain(chain).map((order) => {
          const slot = `${frame.id} ${order.name}`
          const text = JSON.stringify(order.making)
          const known = jobs.get(slot)
          if (known?.order === text) return known.done
          // Nothing to make and nothing to take back.
          if (order.making === null && !known) return undefined
          const done = Promise.resolve().then(() => work(frame, slot, order, text))
          jobs.set(slot, { order: text, done })
          return done
        }),
      )
    },
  }
}
