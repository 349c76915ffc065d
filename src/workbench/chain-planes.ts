// Keeps the planes that chains read in step with the chains: made in a worker when their orders change, the old one standing
// until the new one is there. What must not lack any (an export, a small picture) waits for them.
import { type Remote, wrap } from 'comlink'
import type { Frame } from '../frame/frame.ts'
import type { Table } from '../operations/define.ts'
import type { Chain } from '../operations/step.ts'
import { planesOfChain, planeSource, type PlaneOrder } from '../pipeline/planes-of-chain.ts'
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

export function createChainPlanes(supplies: SupplyStore, tasks: TaskList): ChainPlanes {
  /** The latest order of each plane of each frame, as text, and when it is done. */
  const jobs = new Map<string, { readonly order: string; readonly done: Promise<void> }>()
  let remote: Remote<PlaneWorker> | null = null
  let taken: Frame | null = null

  function make({ frame }: PlanedFrame, order: PlaneOrder): Promise<Table | null> {
    remote ??= wrap<PlaneWorker>(new Worker(new URL('./plane-worker.ts', import.meta.url), { type: 'module' }))
    // Messages arrive in order, so the source is there before the order that needs it.
    if (taken !== frame) void remote.take(planeSource(frame))
    taken = frame
    return remote.make(order)
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
      jobs.delete(slot)
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
