// `npm run render` as a person runs it: files in, pictures out that libvips reads to the code, failures in one sentence each.
import { spawnSync } from 'node:child_process'
import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { expect, it } from 'vitest'
import { decodeFrame } from '../../src/decode/decode-frame.ts'
import { startLibRawInNode } from '../../src/decode/libraw-in-node.ts'
import { addStep } from '../../src/edits/stack.ts'
import { renderCpuStrip } from '../../src/export/cpu-strip.ts'
import { describe } from '../../src/pipeline/describe.ts'
import { writeEditFile } from '../../src/roll/edit-file.ts'
import { vipsCodes } from '../support/developed-files.ts'
import { hasTool, readMetadata, say } from '../support/outside-tools.ts'
import { writeDng } from '../support/synthetic-dng.ts'
import { syntheticMosaic } from '../support/synthetic-mosaic.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'

const folder = temporaryFolder()
const ours = (path: string) => fileURLToPath(new URL(`../../${path}`, import.meta.url))

const { width, height, codes, cfa, black, white } = syntheticMosaic(192, 128)
const raw = join(folder, 'slope.dng')
writeFileSync(raw, writeDng({ width, height, codes, cfa, black, white }))

const chain = addStep(
  addStep(addStep([], 'neutral', { redStops: -1.4, blueStops: 0.8 }), 'hueTurn', { angleDeg: 140 }),
  'outputTransform',
)
const edit = join(folder, 'edit.json')
writeFileSync(edit, writeEditFile({ filterNm: 720, chain, marks: [], tables: {} }))

function render(...words: string[]) {
  const loaders = ['--import', 'tsx', '--import', ours('src/commands/text-modules.mjs')]
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [...loaders, ours('src/commands/render.ts'), ...words],
    {
      encoding: 'utf8',
      cwd: ours('.'),
    },
  )
  return { status, said: stdout, complained: stderr }
}
const newFolder = () => mkdtempSync(join(folder, 'out-'))

it.skipIf(!hasTool('vips'))(
  'a TIFF holds the reference engine’s picture of the edit file’s chain (skipped without vips)',
  async () => {
    const out = newFolder()
    expect(render(raw, '--out', out, '--edit', edit, '--space', 'display-p3')).toMatchObject({
      status: 0,
      complained: '',
    })
    const picture = join(out, 'slope.tif')
    say('vips', ['rawsave', picture, `${picture}.raw`])
    const read = new Uint16Array(Uint8Array.from(readFileSync(`${picture}.raw`)).buffer)

    const frame = await decodeFrame(await startLibRawInNode(), {
      fileName: 'slope.dng',
      bytes: Uint8Array.from(readFileSync(raw)),
    })
    const { sensor, facts } = frame
    const whole = { top: 0, rows: sensor.height, bits: 16 } as const
    const expected = renderCpuStrip(
      sensor,
      describe(chain, { ...facts, filterNm: 720 }, { space: 'display-p3' }),
      whole,
    )
    expect(read).toEqual(expected.samples)
  },
)

it.skipIf(!hasTool('vips'))('a finished TIFF opens as it looks, however coloured (skipped without vips)', async () => {
  const [first, second] = [newFolder(), newFolder()]
  expect(render(raw, '--out', first, '--edit', edit).status).toBe(0)
  expect(render(join(first, 'slope.tif'), '--out', second)).toMatchObject({ status: 0, complained: '' })
  const [before, after] = [first, second].map((out) => vipsCodes(join(out, 'slope.tif'), 16))
  // Linear codes of 16 bits are 12.92 encoded ones apart near black (IEC 61966-2-1); half of that each way, and our own rounding.
  expect(Math.max(...before.map((code, i) => Math.abs(code - after[i])))).toBeLessThanOrEqual(8)
})

it.skipIf(!hasTool('exiftool'))('a JPEG names camera and profile (skipped without exiftool)', () => {
  const out = newFolder()
  expect(render(raw, '--out', out, '--format', 'jpeg', '--filter', '590').status).toBe(0)
  expect(readMetadata(join(out, 'slope.jpg'))).toMatchObject({
    'IFD0:Make': 'Rimeleaf',
    'IFD0:Model': 'Synthetic',
    'ICC_Profile:ProfileDescription': 'Rimeleaf sRGB',
  })
})

it('a file that cannot be opened gets its sentence, the others go on, and the command says that something failed', () => {
  const out = newFolder()
  const text = join(folder, 'notes.txt')
  writeFileSync(text, 'not a raw file')
  const missing = join(folder, 'missing.dng')
  const { status, complained } = render(text, missing, raw, '--out', out)
  expect(status).toBe(1)
  const sentences = complained.trim().split('\n')
  expect(sentences).toHaveLength(2)
  expect(sentences[0]).toContain('notes.txt')
  expect(sentences[1]).toContain(missing)
  expect(readdirSync(out)).toEqual(['slope.tif'])
})

it('replaces nothing unless told to', () => {
  const out = newFolder()
  writeFileSync(join(out, 'slope.tif'), 'older')
  expect(render(raw, '--out', out)).toMatchObject({ status: 1, complained: expect.stringContaining('--overwrite') })
  expect(readFileSync(join(out, 'slope.tif'), 'utf8')).toBe('older')
  expect(render(raw, '--out', out, '--overwrite').status).toBe(0)
  expect(readFileSync(join(out, 'slope.tif')).subarray(0, 2).toString()).toBe('II')
})

it('refuses a broken edit file before any work, and shows its use where words are wrong', () => {
  const out = join(newFolder(), 'never-made')
  const broken = join(folder, 'broken.json')
  writeFileSync(broken, '{"version": 1}')
  expect(render(raw, '--out', out, '--edit', broken)).toMatchObject({
    status: 1,
    complained: expect.stringContaining('broken.json'),
  })
  expect(render(raw)).toMatchObject({ status: 1, complained: expect.stringContaining('--out DIR') })
  expect(() => readdirSync(out)).toThrow(/ENOENT/)
})

it('asked for help it prints every option on its output, nothing is complained of and nothing written', () => {
  const { status, said, complained } = render('--help')
  expect({ status, complained }).toEqual({ status: 0, complained: '' })
  for (const option of ['out', 'edit', 'filter', 'format', 'bits', 'space', 'quality', 'keep-location', 'overwrite'])
    expect(said).toContain(`--${option}`)
})
