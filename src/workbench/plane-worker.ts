// Makes planes over a frame on a thread of its own: finding shade takes a second. It keeps the source it was given last.
import { expose, transfer } from 'comlink'
import type { Table } from '../operations/define.ts'
import { makePlane, type PlaneOrder, type PlaneSource } from '../pipeline/planes-of-chain.ts'

let source: PlaneSource | null = null

const planeWorker = {
  take(next: PlaneSource): void {
    source = next
  },
  make(order: PlaneOrder): Table | null {
    if (!source) throw new Error('No frame was given to make a plane of.')
    const table = makePlane(order, source)
    return table && transfer(table, [table.data.buffer])
  },
}
export type PlaneWorker = typeof planeWorker

expose(planeWorker)
