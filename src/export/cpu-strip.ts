// A strip of the finished picture by the reference engine: sensor codes in, dithered codes of `displayRgb` out.
// Strips know their place in the frame, so that they meet without a seam whoever renders them.
import type { SensorData } from '../frame/frame.ts'
import type { PipelineDescription } from '../pipeline/description.ts'
import { quantise } from '../pipeline/quantise.ts'
import { renderOnCpu } from '../pipeline/render-on-cpu.ts'
import { demosaicTile } from '../sensor/demosaic-tile.ts'
import type { BitDepth, PictureStrip } from './picture-strip.ts'

/** Rows `top` … `top + rows − 1` at full resolution. */
export function renderCpuStrip(
  sensor: SensorData,
  description: PipelineDescription,
  { top, rows, bits }: { readonly top: number; readonly rows: number; readonly bits: BitDepth },
): PictureStrip {
  const { width, height } = sensor
  const area = { x: 0, y: top, width, height: rows }
  const region = { ...area, frameWidth: width, frameHeight: height }
  const rgb = renderOnCpu(description, demosaicTile(sensor, area, description.mosaicGains), region)
  return { top, rows, samples: bits === 8 ? quantise(rgb, region, 8) : quantise(rgb, region, 16) }
}
