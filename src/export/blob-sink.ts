// A sink in memory, for browsers that cannot write files: the parts become one Blob, which browsers may keep on disk.
import type { Sink } from './sink.ts'

export interface BlobSink extends Sink {
  /** The file; only after `finish`. */
  file(): Blob
}

export function blobSink(): BlobSink {
  let parts: Blob[] = []
  let finished: Blob | undefined
  return {
    async append(bytes) {
      parts.push(new Blob([bytes]))
    },
    async replace(position, bytes) {
      const written = new Blob(parts)
      parts = [written.slice(0, position), new Blob([bytes]), written.slice(position + bytes.length)]
    },
    async finish() {
      finished = new Blob(parts)
      parts = []
    },
    async abandon() {
      parts = []
    },
    file() {
      if (!finished) throw new Error('The exported file is not complete.')
      return finished
    },
  }
}
