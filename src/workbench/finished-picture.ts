// The finished picture of a frame at full resolution for export: on the graphics where they compute in 32-bit float, else, or
// from where they gave up, on the processor. Both give the same codes within one. For workers.
import { renderCpuStrip } from '../export/cpu-strip.ts'
import type { FinishedPicture, PictureStrip, StripRequest } from '../export/picture-strip.ts'
import type { SensorData } from '../frame/frame.ts'
import { createCanvasContext } from '../gpu/canvas-context.ts'
import { detectCapabilities } from '../gpu/capabilities.ts'
import { createChainPrograms } from '../gpu/chain-program.ts'
import { exportBands, type ExportContext } from '../gpu/export-bands.ts'
import { createPass } from '../gpu/pass.ts'
import type { PipelineDescription } from '../pipeline/description.ts'

/** A graphics context of the worker's own, or null where it cannot compute an export. */
function exportContext(): ExportContext | null {
  try {
    const renderer = createCanvasContext(new OffscreenCanvas(1, 1))
    const { export32F } = detectCapabilities(renderer.getContext() as WebGL2RenderingContext)
    return export32F ? { renderer, pass: createPass(renderer), programs: createChainPrograms() } : null
  } catch {
    return null
  }
}

async function* onGraphics(
  context: ExportContext,
  sensor: SensorData,
  description: PipelineDescription,
  { bits, rowsPerStrip, signal }: StripRequest,
): AsyncGenerator<PictureStrip> {
  try {
    for await (const strip of exportBands(context, { sensor, description, bits, rowsPerBand: rowsPerStrip })) {
      signal.throwIfAborted()
      yield strip
    }
  } catch (reason) {
    if (!context.renderer.getContext().isContextLost()) throw reason
  } finally {
    context.programs.dispose()
    context.renderer.dispose()
  }
}

export function finishedPicture(sensor: SensorData, description: PipelineDescription): FinishedPicture {
  const { width, height } = sensor
  return {
    width,
    height,
    async *renderStrips(request) {
      const context = exportContext()
      let top = 0
      if (context) {
        for await (const strip of onGraphics(context, sensor, description, request)) {
          yield strip
          top = strip.top + strip.rows
        }
      }
      for (; top < height; top += request.rowsPerStrip) {
        request.signal.throwIfAborted()
        const rows = Math.min(request.rowsPerStrip, height - top)
        yield renderCpuStrip(sensor, description, { top, rows, bits: request.bits })
      }
    },
  }
}
