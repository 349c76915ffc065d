// One raw file to one finished picture without a page: decoded, finished by the reference engine, written.
import { access, readFile } from 'node:fs/promises'
import { availableParallelism } from 'node:os'
import { basename, join } from 'node:path'
import { decodeFrame } from '../decode/decode-frame.ts'
import type { LibRaw } from '../decode/libraw.ts'
import { defaultChain } from '../edits/default-chain.ts'
import { exportedName } from '../export/exported-name.ts'
import { exportPicture } from '../export/export-picture.ts'
import { packStrip } from '../export/pack-strip.ts'
import { planeSource, suppliesOf } from '../pipeline/planes-of-chain.ts'
import type { Edit } from '../roll/edit.ts'
import { tableSupplies } from '../roll/edit-content.ts'
import { fileSink } from './file-sink.ts'
import type { RenderOptions } from './render-options.ts'
import { threadedPicture } from './threaded-picture.ts'

export interface RenderedFile {
  readonly path: string
  /** Sentences about damage that decoding survived. */
  readonly warnings: readonly string[]
}

async function readRaw(path: string): Promise<Uint8Array<ArrayBuffer>> {
  try {
    return await readFile(path)
  } catch (reason) {
    const { code, message } = reason as NodeJS.ErrnoException
    if (code === 'ENOENT') throw new Error(`${path} does not exist.`, { cause: reason })
    throw new Error(`${path} cannot be read: ${message}.`, { cause: reason })
  }
}

const exists = (path: string) =>
  access(path).then(
    () => true,
    () => false,
  )

/**
 * Renders `file` into the folder `options.out`, which exists. `edit` gives the chain; without it the opening chain is used.
 * @throws Error with one sentence for people
 */
export async function renderFile(
  libraw: LibRaw,
  file: string,
  edit: Edit | null,
  options: RenderOptions,
): Promise<RenderedFile> {
  const { out, overwrite, settings } = options
  const path = join(out, exportedName(basename(file), settings.format))
  if (!overwrite && (await exists(path)))
    throw new Error(`${path} is there already: say --overwrite to replace it, or another --out.`)

  const frame = await decodeFrame(libraw, { fileName: basename(file), bytes: await readRaw(file) })
  const filterNm = options.filterNm !== undefined ? options.filterNm : (edit?.filterNm ?? frame.facts.filterNm)
  const facts = { ...frame.facts, filterNm }
  const chain = edit?.chain ?? defaultChain(facts)
  await exportPicture({
    ...settings,
    picture: threadedPicture({
      sensor: frame.sensor,
      chain,
      facts,
      supplies: { ...suppliesOf(chain, planeSource(frame)), ...tableSupplies(edit?.tables ?? {}) },
      space: settings.space,
    }),
    metadata: frame.metadata,
    sink: await fileSink(path),
    packStrip,
    packers: availableParallelism(),
    signal: new AbortController().signal,
    onProgress: () => undefined,
  })
  return { path, warnings: frame.warnings }
}
