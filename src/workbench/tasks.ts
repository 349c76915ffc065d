// Work that takes a while: its progress, the time it still needs, and how to cancel it.
import type { Task } from './session.ts'
import { setTasks, type SessionStore } from './session-store.ts'

/** Time before an estimate is worth showing, in ms (our choice). */
const estimateAfterMs = 800

interface RunningTask {
  readonly id: string
  readonly signal: AbortSignal
  progress(fraction: number): void
  end(): void
}

export interface TaskList {
  begin(label: string, options?: { cancellable?: boolean }): RunningTask
  cancel(id: string): void
}

export function createTaskList(store: SessionStore): TaskList {
  const aborts = new Map<string, AbortController>()
  const change = (id: string, values: Partial<Task>) =>
    setTasks(store, (tasks) => tasks.map((task) => (task.id === id ? { ...task, ...values } : task)))

  return {
    begin(label, { cancellable = false } = {}) {
      const id = crypto.randomUUID()
      const abort = new AbortController()
      const startedAt = performance.now()
      aborts.set(id, abort)
      setTasks(store, (tasks) => [...tasks, { id, label, fraction: null, secondsLeft: null, cancellable }])
      return {
        id,
        signal: abort.signal,
        progress(fraction) {
          const elapsedMs = performance.now() - startedAt
          const known = fraction > 0.02 && elapsedMs > estimateAfterMs
          change(id, {
            fraction,
            secondsLeft: known ? ((elapsedMs / fraction) * (1 - fraction)) / 1000 : null,
          })
        },
        end() {
          aborts.delete(id)
          setTasks(store, (tasks) => tasks.filter((task) => task.id !== id))
        },
      }
    },
    cancel(id) {
      aborts.get(id)?.abort()
    },
  }
}
