// Tables that chains name and that do not stand in their values: those every frame may use, and those of single frames.
import type { Supplies, Table } from '../operations/define.ts'

export interface SupplyStore {
  /** All that a frame's chain may read; the same object until something changes. */
  of(frameId: string): Supplies
  /** Offers a table to every frame, or takes it back with null. */
  share(name: string, table: Table | null): void
  /** Offers a table to one frame, or takes it back with null. */
  put(frameId: string, name: string, table: Table | null): void
  /** Calls after every change until the returned function is called. */
  onChange(listener: () => void): () => void
}

export function createSupplyStore(): SupplyStore {
  let shared: Supplies = {}
  const own = new Map<string, Supplies>()
  const merged = new Map<string, Supplies>()
  const listeners = new Set<() => void>()

  function tell(): void {
    for (const listener of listeners) listener()
  }
  return {
    of(frameId) {
      const known = merged.get(frameId) ?? { ...shared, ...own.get(frameId) }
      merged.set(frameId, known)
      return known
    },
    share(name, table) {
      const { [name]: _before, ...others } = shared
      shared = table ? { ...others, [name]: table } : others
      merged.clear()
      tell()
    },
    put(frameId, name, table) {
      const { [name]: _before, ...others } = own.get(frameId) ?? {}
      own.set(frameId, table ? { ...others, [name]: table } : others)
      merged.delete(frameId)
      tell()
    },
    onChange(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
  }
}
