// Makes planes over a frame on a thread of its own: finding shade takes a second. It keeps the overview it was given last.
import { expose, transfer } from 'comlink'
import type { Overview } from '../frame/frame.ts'
import type { Table } from '../operations/define.ts'
import { makePlane, type PlaneOrder } from '../pipeline/planes-of-chain.ts'

let overview: Overview | null = null

const planeWorker = {
  take(next: Overview): void {
    overview = next
  },
  make(order: PlaneOrder): Table | null {
    if (!overview) throw new Error('No frame was given to make a plane of.')
    const table = makePlane(order, overview)
    return table && transfer(table, [table.data.buffer])
  },
}
export type PlaneWorker = typeof planeWorker

expose(planeWorker)
