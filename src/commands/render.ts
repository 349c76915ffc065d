// `npm run render`: finished pictures from raw files without a page. One line per file; a failed one stops no other.
import { mkdir, readFile } from 'node:fs/promises'
import { wordsOf } from '../text/thrown.ts'
import { startLibRawInNode } from '../decode/libraw-in-node.ts'
import type { Edit } from '../roll/edit.ts'
import { readEditFile } from '../roll/edit-file.ts'
import { answerHelp } from './answer-help.ts'
import { prepareJpegEncoder, prepareNodeJpegDecoder } from './node-jpeg.ts'
import { renderFile } from './render-file.ts'
import { readRenderOptions, type RenderOptions, renderUsage } from './render-options.ts'

function optionsOrUsage(): RenderOptions {
  try {
    return readRenderOptions(process.argv.slice(2))
  } catch (reason) {
    console.error(`${wordsOf(reason)}\n\n${renderUsage}`)
    process.exit(1)
  }
}

async function editOf({ edit }: RenderOptions): Promise<Edit | null> {
  if (edit === undefined) return null
  const text = await readFile(edit, 'utf8').catch((reason) => {
    throw new Error(`The edit file ${edit} cannot be read: ${wordsOf(reason)}.`)
  })
  return readEditFile(text, edit)
}

async function main(): Promise<void> {
  answerHelp(renderUsage)
  const options = optionsOrUsage()
  const edit = await editOf(options)
  await mkdir(options.out, { recursive: true })
  if (options.settings.format === 'jpeg') await prepareJpegEncoder()
  await prepareNodeJpegDecoder()
  const libraw = await startLibRawInNode()
  for (const file of options.files) {
    const started = performance.now()
    try {
      const { path, warnings } = await renderFile(libraw, file, edit, options)
      console.log(`${path}  ${((performance.now() - started) / 1000).toFixed(1)} s`)
      for (const warning of warnings) console.warn(`${file}: ${warning}`)
    } catch (reason) {
      console.error(wordsOf(reason))
      process.exitCode = 1
    }
  }
}

main().catch((reason: unknown) => {
  console.error(wordsOf(reason))
  process.exitCode = 1
})
