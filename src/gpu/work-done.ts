// Whether the GPU is through with what it was told. What is asked of it while it works, such as where a program's uniforms lie, holds
// up the interface until it is.

/** Time between two looks, in ms (our choice). */
const lookMs = 4

/** Resolves when everything told to the context so far is done, or the context is lost; never waits on the GPU itself. */
export async function workDone(gl: WebGL2RenderingContext): Promise<void> {
  const sync = gl.fenceSync(gl.SYNC_GPU_COMMANDS_COMPLETE, 0)
  if (!sync) return
  gl.flush()
  while (!gl.isContextLost() && gl.getSyncParameter(sync, gl.SYNC_STATUS) !== gl.SIGNALED)
    await new Promise((resolve) => setTimeout(resolve, lookMs))
  gl.deleteSync(sync)
}
