// The finished picture of a frame by the reference engine on several threads, as strips in order.
// Threads read one shared copy of the sensor codes; each has one strip in hand and its next one waiting.
import { availableParallelism } from 'node:os'
import { Worker } from 'node:worker_threads'
import type { OutputSpaceId } from '../colour/output-space.ts'
import type { Chain } from '../edits/stack.ts'
import type { BitDepth, FinishedPicture, PictureStrip, StripRequest } from '../export/picture-strip.ts'
import type { FrameFacts, SensorData } from '../frame/frame.ts'
import type { Supplies } from '../operations/define.ts'

export interface ThreadPicture {
  readonly sensor: SensorData
  readonly chain: Chain
  readonly facts: FrameFacts
  readonly supplies: Supplies
  readonly space: OutputSpaceId
}

export interface StripOrder {
  readonly top: number
  readonly rows: number
  readonly bits: BitDepth
}

/** A thread does not inherit the TypeScript loader: it registers loaders itself before it loads its module. */
const bootstrap = `
Promise.all([import('tsx/esm/api'), import(${JSON.stringify(new URL('./text-modules.mjs', import.meta.url).href)})])
  .then(([{ register }, textModules]) => {
    register()
    textModules.registerTextModules()
    return import(${JSON.stringify(new URL('./strip-thread.ts', import.meta.url).href)})
  })`

function shared(sensor: SensorData): SensorData {
  const codes = new Uint16Array(new SharedArrayBuffer(sensor.codes.byteLength))
  codes.set(sensor.codes)
  return { ...sensor, codes }
}

/** One thread that answers orders in the order they were given. */
function startThread(picture: ThreadPicture) {
  const worker = new Worker(bootstrap, { eval: true, workerData: picture })
  const waiting: { resolve(strip: PictureStrip): void; reject(reason: Error): void }[] = []
  worker.on('message', (strip: PictureStrip) => waiting.shift()!.resolve(strip))
  worker.on('error', (reason: Error) => waiting.splice(0).forEach(({ reject }) => reject(reason)))
  return {
    strip(order: StripOrder): Promise<PictureStrip> {
      const answer = new Promise<PictureStrip>((resolve, reject) => waiting.push({ resolve, reject }))
      // Whoever waits for an earlier strip hears of a failure first; this one must not count as unhandled.
      answer.catch(() => undefined)
      worker.postMessage(order)
      return answer
    },
    stop: () => worker.terminate(),
  }
}

async function* renderStrips(picture: ThreadPicture, { bits, rowsPerStrip, signal }: StripRequest) {
  const { height } = picture.sensor
  const strips = Math.ceil(height / rowsPerStrip)
  const count = Math.min(availableParallelism(), strips)
  const inThreads = { ...picture, sensor: shared(picture.sensor) }
  const threads = Array.from({ length: count }, () => startThread(inThreads))
  const coming: Promise<PictureStrip>[] = []
  let ordered = 0
  const orderNext = () => {
    if (ordered === strips) return
    const top = ordered * rowsPerStrip
    coming.push(threads[ordered % count].strip({ top, rows: Math.min(rowsPerStrip, height - top), bits }))
    ordered++
  }
  try {
    for (let i = 0; i < 2 * count; i++) orderNext()
    while (coming.length > 0) {
      signal.throwIfAborted()
      yield await coming.shift()!
      orderNext()
    }
  } finally {
    await Promise.all(threads.map((thread) => thread.stop()))
  }
}

/** The picture of a frame at its full resolution, encoded in `space`. */
export function threadedPicture(picture: ThreadPicture): FinishedPicture {
  const { width, height } = picture.sensor
  return { width, height, renderStrips: (request) => renderStrips(picture, request) }
}
