// Browser worker that makes one demo frame per request and posts progress, then the finished file. Requests wait in line.
import { makeFrame, type StripHelper } from './make-frame.ts'
import type { FrameReply, FrameRequest, ShareReply, ShareRequest } from './worker-messages.ts'

const post = (reply: FrameReply, transfer: Transferable[] = []) => self.postMessage(reply, { transfer })

const helpInWorker: StripHelper = (order, part, of, onStrip) =>
  new Promise((resolve, reject) => {
    const worker = new Worker(new URL('./strip-worker.ts', import.meta.url), { type: 'module' })
    const end = (settle: () => void) => {
      worker.terminate()
      settle()
    }
    worker.addEventListener('error', (event) => end(() => reject(new Error(event.message))))
    worker.addEventListener('message', ({ data }: MessageEvent<ShareReply>) => {
      if (data.kind === 'strip') onStrip(data.strip)
      else if (data.kind === 'finished') end(resolve)
      else end(() => reject(new Error(data.reason)))
    })
    worker.postMessage({ order, part, of } satisfies ShareRequest, [])
  })

async function serve(request: FrameRequest): Promise<void> {
  const { frameId, megapixels, truth } = request
  try {
    const helpers = Array.from({ length: request.helpers }, () => helpInWorker)
    const onProgress = (done: number) => post({ kind: 'progress', frameId, done })
    const { size, ...made } = await makeFrame({ frameId, megapixels, truth }, onProgress, helpers)
    post({ kind: 'finished', frameId, ...made, ...size }, [made.bytes.buffer])
  } catch (error) {
    post({ kind: 'failed', frameId, reason: error instanceof Error ? error.message : String(error) })
  }
}

let line = Promise.resolve()
self.addEventListener('message', ({ data }: MessageEvent<FrameRequest>) => {
  line = line.then(() => serve(data))
})
