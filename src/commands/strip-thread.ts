// A thread of the render command: works out strips of one frame with the reference engine.
import { parentPort, workerData } from 'node:worker_threads'
import { renderCpuStrip } from '../export/cpu-strip.ts'
import { describe } from '../pipeline/describe.ts'
import type { StripOrder, ThreadPicture } from './threaded-picture.ts'

const { sensor, chain, facts, supplies, space } = workerData as ThreadPicture
const description = describe(chain, facts, { space, supplies })

parentPort!.on('message', (order: StripOrder) => {
  const strip = renderCpuStrip(sensor, description, order)
  parentPort!.postMessage(strip, [strip.samples.buffer])
})
