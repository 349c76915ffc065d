// The strip worker of the command line: a Node thread with the same messages as the browser's.
import { parentPort } from 'node:worker_threads'
import { makeShare } from './make-frame.ts'
import type { ShareReply, ShareRequest } from './worker-messages.ts'

const post = (reply: ShareReply, transfer: ArrayBuffer[] = []) => parentPort!.postMessage(reply, transfer)

parentPort!.on('message', ({ order, part, of }: ShareRequest) => {
  makeShare(order, part, of, (strip) => post({ kind: 'strip', strip }, [strip.codes.buffer as ArrayBuffer])).then(
    () => post({ kind: 'finished' }),
    (error: unknown) => post({ kind: 'failed', reason: error instanceof Error ? error.message : String(error) }),
  )
})
