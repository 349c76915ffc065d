// The only door from the application to the demo roll: frames are made in a worker, one after the other, as raw files
// that then take the same way in as any other file.
import { roll } from '../../demo-data/roll.ts'
import type { FrameReply, FrameRequest } from '../../demo-data/worker-messages.ts'

/** Size at which the roll appears within seconds a frame. */
const megapixels = 6

export const demoRollName = 'Heron Mere'

export interface DemoFrame {
  readonly id: string
  readonly fileName: string
  /** Cut-on in nm, null without a filter: what the photographer of the roll would state. */
  readonly filterNm: number | null
}

export const demoFrames: readonly DemoFrame[] = roll.map(({ id, filter }) => ({
  id,
  fileName: `${id}.dng`,
  filterNm: filter === 'none' ? null : Number(filter),
}))

export interface DemoRollMaker {
  /** Makes one frame. Rejects with an `Error` that says why when it fails, or when the maker was ended. */
  make(id: string, onProgress: (fraction: number) => void): Promise<File>
  end(): void
}

/** Frames made at the same time, and workers that share the strips of one, so that all cores but the interface's are busy. */
const cores = navigator.hardwareConcurrency ?? 2
export const demoMakers = Math.min(Math.max(Math.floor((cores - 1) / 2), 1), 4)
const stripHelpers = 1

/** Starts the worker that makes demo frames; the caller ends it. */
export function startDemoRollMaker(): DemoRollMaker {
  const worker = new Worker(new URL('../../demo-data/worker.ts', import.meta.url), { type: 'module' })
  let endWaiting = () => {}
  return {
    make: (frameId, onProgress) =>
      new Promise((resolve, reject) => {
        const settle = (act: () => void) => {
          worker.removeEventListener('message', onMessage)
          worker.removeEventListener('error', onError)
          act()
        }
        const onMessage = ({ data }: MessageEvent<FrameReply>) => {
          if (data.frameId !== frameId) return
          if (data.kind === 'progress') onProgress(data.done)
          else if (data.kind === 'finished') settle(() => resolve(new File([data.bytes], data.fileName)))
          else settle(() => reject(new Error(data.reason)))
        }
        const onError = (event: ErrorEvent) => settle(() => reject(new Error(event.message)))
        endWaiting = () => settle(() => reject(new Error('The demo roll was closed before this frame was made.')))
        worker.addEventListener('message', onMessage)
        worker.addEventListener('error', onError)
        worker.postMessage({ frameId, megapixels, truth: false, helpers: stripHelpers } satisfies FrameRequest)
      }),
    end() {
      worker.terminate()
      endWaiting()
    },
  }
}
