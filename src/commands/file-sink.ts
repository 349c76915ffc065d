// A sink on this machine's disk: writes `name.part` beside the final name and renames it when the file is complete.
import { open, rename, rm } from 'node:fs/promises'
import type { Sink } from '../export/sink.ts'

/** Opens the sink; `path` must not need folders made. */
export async function fileSink(path: string): Promise<Sink> {
  const partPath = `${path}.part`
  const file = await open(partPath, 'w')
  let end = 0
  return {
    async append(bytes) {
      await file.write(bytes, 0, bytes.length, end)
      end += bytes.length
    },
    async replace(position, bytes) {
      await file.write(bytes, 0, bytes.length, position)
    },
    async finish() {
      await file.close()
      await rename(partPath, path)
    },
    async abandon() {
      await file.close().catch(() => undefined)
      await rm(partPath, { force: true })
    },
  }
}
