// `npm run demo:files -- --out DIR [--megapixels 6] [--frames 1,3] [--workers 2]`: writes the demo roll as raw files.
import { mkdirSync, writeFileSync } from 'node:fs'
import { availableParallelism } from 'node:os'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { Worker } from 'node:worker_threads'
import { makeFrame, type StripHelper } from './make-frame.ts'
import { provideJpegEncoderFromDisk } from './node-jpeg.ts'
import { roll } from './roll.ts'
import type { ShareReply, ShareRequest } from './worker-messages.ts'

const usage = `npm run demo:files -- --out DIR [options]

Writes the demo roll as raw files (DNG).

  --out DIR         folder that the files go to; made where it is missing
  --megapixels N    (6) size of each frame
  --frames 1,3      only these frames of the roll, counted from 1
  --workers N       threads to paint with
  --help            print this`
if (process.argv.some((word) => word === '--help' || word === '-h')) {
  console.log(usage)
  process.exit(0)
}
const { values } = parseArgs({
  options: {
    out: { type: 'string' },
    megapixels: { type: 'string', default: '6' },
    frames: { type: 'string' },
    workers: { type: 'string', default: String(Math.min(4, availableParallelism())) },
  },
})

/** A thread does not inherit the TypeScript loader, so it registers the loader itself before it loads the worker. */
const bootstrap = `import('tsx/esm/api').then(({ register }) => {
  register()
  return import(${JSON.stringify(new URL('./node-strip-worker.ts', import.meta.url).href)})
})`

const helpInThread: StripHelper = (order, part, of, onStrip) =>
  new Promise((resolve, reject) => {
    const worker = new Worker(bootstrap, { eval: true })
    const end = (settle: () => void) => void worker.terminate().then(settle)
    worker.on('error', reject)
    worker.on('message', (reply: ShareReply) => {
      if (reply.kind === 'strip') onStrip(reply.strip)
      else if (reply.kind === 'finished') end(resolve)
      else end(() => reject(new Error(reply.reason)))
    })
    worker.postMessage({ order, part, of } satisfies ShareRequest, [])
  })

function chosenFrames(list: string | undefined) {
  if (!list) return roll
  return list.split(',').map((number) => {
    const frame = roll[Number(number) - 1]
    if (!frame)
      throw new Error(`--frames ${list}: there is no frame ${number}; the roll has frames 1 to ${roll.length}.`)
    return frame
  })
}

async function main(): Promise<void> {
  if (!values.out) throw new Error(`Say where the files should go: --out DIR\n\n${usage}`)
  const helpers = Array.from({ length: Math.max(1, Number(values.workers)) - 1 }, () => helpInThread)
  mkdirSync(values.out, { recursive: true })
  provideJpegEncoderFromDisk()
  for (const frame of chosenFrames(values.frames)) {
    const started = performance.now()
    const order = { frameId: frame.id, megapixels: Number(values.megapixels) }
    const made = await makeFrame(order, undefined, helpers)
    const path = join(values.out, made.fileName)
    writeFileSync(path, made.bytes)
    const seconds = ((performance.now() - started) / 1000).toFixed(1)
    process.stdout.write(`${path}  ${made.size.width}×${made.size.height}  ${seconds} s\n`)
  }
}

main().catch((error: unknown) => {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`)
  process.exitCode = 1
})
