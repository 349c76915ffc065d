// What the stores say, read at most so often: between two readings nothing is drawn again, however fast the probe roams.
// The last change is always read.
import { useEffect, useState } from 'react'

interface Told {
  subscribe(listener: () => void): () => void
}

const isSame = (before: readonly unknown[], now: readonly unknown[]) =>
  before.length === now.length && before.every((part, i) => part === now[i])

/**
 * The parts that `read` gives, the same array while no part changed. `stores` and `read` must keep their identity; another
 * `read` is followed at once.
 */
export function useThrottledParts<T extends readonly unknown[]>(
  stores: readonly Told[],
  read: () => T,
  everyMs: number,
): T {
  const [parts, setParts] = useState(read)
  const [lastRead, setLastRead] = useState(() => read)
  if (lastRead !== read) {
    setLastRead(() => read)
    setParts(read)
  }
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined
    let readAt = -Infinity
    const readNow = () => {
      timer = undefined
      readAt = performance.now()
      const now = read()
      setParts((before) => (isSame(before, now) ? before : now))
    }
    const ask = () => {
      timer ??= setTimeout(readNow, Math.max(0, readAt + everyMs - performance.now()))
    }
    const stops = stores.map((store) => store.subscribe(ask))
    ask()
    return () => {
      clearTimeout(timer)
      for (const stop of stops) stop()
    }
  }, [stores, read, everyMs])
  return parts
}
