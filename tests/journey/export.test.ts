// The picture that the page exports is the picture that `render` makes from the same file, within one code of 16 bits;
// libvips reads both files.
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { expect, it } from 'vitest'
import { hasTool, readMetadata, say } from '../support/outside-tools.ts'
import { writeDng } from '../support/synthetic-dng.ts'
import { syntheticMosaic } from '../support/synthetic-mosaic.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'
import { journeySite } from '../support/journey-site.ts'

const folder = temporaryFolder()
const ours = (path: string) => fileURLToPath(new URL(`../../${path}`, import.meta.url))

const site = journeySite()

function samplesOf(picture: string): Uint16Array {
  say('vips', ['rawsave', picture, `${picture}.raw`])
  return new Uint16Array(Uint8Array.from(readFileSync(`${picture}.raw`)).buffer)
}

/** Metadata without what differs between any two files. */
function ownFacts(path: string): Record<string, string | number> {
  const facts = Object.entries(readMetadata(path)).filter(([name]) => /^(IFD0:(?!Strip)|ExifIFD|ICC)/.test(name))
  return Object.fromEntries(facts)
}

it.skipIf(!hasTool('vips') || !hasTool('exiftool'))(
  'page and command line write the same picture (skipped without vips, exiftool)',
  async () => {
    const { width, height, codes, cfa, black, white } = syntheticMosaic(720, 480)
    const raw = join(folder, 'slope.dng')
    writeFileSync(raw, writeDng({ width, height, codes, cfa, black, white }))

    const { page, faults } = await site.open()
    await page.locator('input[type=file]').first().setInputFiles(raw)
    await page.getByRole('heading', { name: 'Neutral' }).waitFor()
    await page.getByRole('button', { name: 'Export', exact: true }).click()
    const downloading = page.waitForEvent('download')
    await page.getByRole('dialog').getByRole('button', { name: 'Export', exact: true }).click()
    const download = await downloading
    expect(download.suggestedFilename()).toBe('slope.tif')
    const byPage = join(folder, 'by-page.tif')
    await download.saveAs(byPage)

    const loaders = ['--import', 'tsx', '--import', ours('src/commands/text-modules.mjs')]
    say(process.execPath, [...loaders, ours('src/commands/render.ts'), raw, '--out', folder])
    const [a, b] = [samplesOf(byPage), samplesOf(join(folder, 'slope.tif'))]
    expect(a.length).toBe(width * height * 3)
    expect(b.length).toBe(a.length)
    const worst = a.reduce((most, sample, i) => Math.max(most, Math.abs(sample - b[i])), 0)
    expect(worst).toBeLessThanOrEqual(1)
    expect(ownFacts(byPage)).toEqual(ownFacts(join(folder, 'slope.tif')))
    expect(faults).toEqual([])
    await page.context().close()
  },
)
