// Tells whether the GPU still works on the last picture and how long the last ones took, without ever waiting for it.

export interface DrawTimer {
  /** Marks the end of a submitted picture; `whole` when it was drawn at full size. */
  mark(whole: boolean): void
  /** True while the last marked picture is not finished. */
  busy(): boolean
  /** True when the last whole pictures all took longer than a person's hand notices. */
  slow(): boolean
  /** Forgets what was pending, after a lost context. */
  reset(): void
}

/** Time of a picture above which it lags behind the hand, in ms; common practice, no source. */
const slowMs = 50
/** Pictures looked at, so that one hiccup changes nothing (our choice). */
const remembered = 3

export function createDrawTimer(gl: WebGL2RenderingContext): DrawTimer {
  let pending: { readonly sync: WebGLSync; readonly markedAt: number; readonly whole: boolean } | null = null
  let times: number[] = []
  return {
    mark(whole) {
      if (pending) gl.deleteSync(pending.sync)
      const sync = gl.fenceSync(gl.SYNC_GPU_COMMANDS_COMPLETE, 0)
      gl.flush()
      pending = sync && { sync, markedAt: performance.now(), whole }
    },
    busy() {
      if (!pending || gl.isContextLost()) return false
      if (gl.getSyncParameter(pending.sync, gl.SYNC_STATUS) !== gl.SIGNALED) return true
      if (pending.whole) times = [...times, performance.now() - pending.markedAt].slice(-remembered)
      gl.deleteSync(pending.sync)
      pending = null
      return false
    },
    slow: () => times.length === remembered && Math.min(...times) > slowMs,
    reset() {
      pending = null
      times = []
    },
  }
}
