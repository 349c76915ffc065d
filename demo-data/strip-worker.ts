// Browser worker that makes its share of one frame's strips and posts each as soon as it is ready.
import { makeShare } from './make-frame.ts'
import type { ShareReply, ShareRequest } from './worker-messages.ts'

const post = (reply: ShareReply, transfer: Transferable[] = []) => self.postMessage(reply, { transfer })

self.addEventListener('message', ({ data }: MessageEvent<ShareRequest>) => {
  makeShare(data.order, data.part, data.of, (strip) =>
    post({ kind: 'strip', strip }, [strip.codes.buffer as ArrayBuffer]),
  ).then(
    () => post({ kind: 'finished' }),
    (error: unknown) => post({ kind: 'failed', reason: error instanceof Error ? error.message : String(error) }),
  )
})
