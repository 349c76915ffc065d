// The demo roll's worker in a real browser: strips shared with a second worker, progress, a finished file, failure as a sentence.
import { expect, test } from 'vitest'
import type { FrameReply, FrameRequest } from '../../demo-data/worker-messages.ts'

function ask(request: FrameRequest): Promise<{ last: FrameReply; progress: number[] }> {
  const worker = new Worker(new URL('../../demo-data/worker.ts', import.meta.url), { type: 'module' })
  const progress: number[] = []
  return new Promise((resolve, reject) => {
    worker.addEventListener('error', (event) => reject(new Error(event.message)))
    worker.addEventListener('message', ({ data }: MessageEvent<FrameReply>) => {
      if (data.kind === 'progress') progress.push(data.done)
      else {
        worker.terminate()
        resolve({ last: data, progress })
      }
    })
    worker.postMessage(request, [])
  })
}

test('a frame is made with a helper and reports its progress', async () => {
  const { last, progress } = await ask({ frameId: 'mere-01-meadow-720', megapixels: 0.1, helpers: 1, truth: true })
  if (last.kind !== 'finished') throw new Error(JSON.stringify(last))
  expect(last.fileName).toBe('mere-01-meadow-720.dng')
  expect(progress.length).toBeGreaterThan(2)
  expect(progress.at(-1)).toBe(1)
  expect(last.material).toHaveLength(last.width * last.height)
  // TIFF 6.0: little-endian byte order mark and the number 42.
  expect([...last.bytes.subarray(0, 4)]).toEqual([0x49, 0x49, 42, 0])
  expect(last.bytes.length).toBeGreaterThan(2 * last.width * last.height)
  const jpegAt = last.bytes.findIndex((v, i) => v === 0xff && last.bytes[i + 1] === 0xd8 && last.bytes[i + 2] === 0xff)
  const preview = await createImageBitmap(new Blob([last.bytes.subarray(jpegAt)], { type: 'image/jpeg' }))
  expect(Math.abs(preview.width / preview.height - 1.5)).toBeLessThan(0.05)
})

test('an unknown frame ends in a sentence', async () => {
  const { last } = await ask({ frameId: 'nowhere', megapixels: 0.1, helpers: 0 })
  expect(last).toMatchObject({ kind: 'failed', reason: expect.stringContaining('No demo frame is called "nowhere"') })
})
