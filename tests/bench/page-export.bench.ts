// Exporting an opened 24 MP frame as a 16-bit TIFF from the page, from the press to the finished download, held to LibRaw's
// better interpolation followed by libvips packing the result in the same way (those read the raw file again each time).
import { join } from 'node:path'
import { benchRow, type BenchRows } from '../../src/commands/bench-row.ts'
import { startWorkbenchSite } from '../support/workbench-page.ts'
import { benchFolder, benchRaw, rawToTiff } from './bench-raw.ts'
import { compareSeconds } from './measure.ts'

/** Longer than an export takes where the processor has to draw, in ms. */
const patienceMs = 300_000

export const rows: BenchRows = async function* () {
  const site = await startWorkbenchSite()
  const { page } = await site.open()
  page.setDefaultTimeout(patienceMs)
  await page.locator('input[type=file]').first().setInputFiles(benchRaw())
  await page.getByRole('heading', { name: 'Neutral' }).waitFor()
  const exportOnce = async () => {
    await page.getByRole('button', { name: 'Export' }).click()
    const download = page.waitForEvent('download')
    await page.getByRole('dialog').getByRole('button', { name: 'Export' }).click()
    await (await download).saveAs(join(benchFolder, 'by-page.tif'))
  }
  const { ours, theirs } = await compareSeconds(exportOnce, rawToTiff(benchRaw()))
  const graphics = await page.evaluate(() => {
    const gl = new OffscreenCanvas(1, 1).getContext('webgl2')
    const names = gl?.getExtension('WEBGL_debug_renderer_info')
    return String(names ? gl!.getParameter(names.UNMASKED_RENDERER_WEBGL) : gl?.getParameter(gl.RENDERER))
  })
  await site.close()
  const name = 'opened 24 MP frame to 16-bit TIFF in the page ÷ dcraw_emu -q 3 -T and vips tiffsave'
  yield benchRow(`${name} (${graphics})`, ours, 's', theirs)
}
