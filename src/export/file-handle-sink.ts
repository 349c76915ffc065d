// A sink in a file the user chose. The browser writes to a file of its own and puts it in place of the chosen one when it
// is closed, so that an older file of that name stays whole until then.
import type { Sink } from './sink.ts'

/** Newer than the type declarations; browsers without it leave the empty file their dialog made. */
type RemovableHandle = FileSystemFileHandle & { remove?(): Promise<void> }

/** Removes the empty file that the browser's dialog made, where nothing came to be written into it. */
export async function removeIfEmpty(handle: FileSystemFileHandle): Promise<void> {
  const size = await handle.getFile().then(
    (file) => file.size,
    () => null,
  )
  if (size === 0) await (handle as RemovableHandle).remove?.()
}

export async function fileHandleSink(handle: FileSystemFileHandle): Promise<Sink> {
  const file = await handle.createWritable()
  let end = 0
  return {
    async append(bytes) {
      await file.write({ type: 'write', position: end, data: bytes })
      end += bytes.length
    },
    replace: (position, bytes) => file.write({ type: 'write', position, data: bytes }),
    finish: () => file.close(),
    async abandon() {
      await file.abort().catch(() => undefined)
      await removeIfEmpty(handle)
    },
  }
}
