// Export on a thread of its own, so that the screen stays free: the graphics renderer and the file writer meet here.
import { expose } from 'comlink'
import type { Chain } from '../edits/stack.ts'
import { blobSink } from '../export/blob-sink.ts'
import { exportPicture, type ExportSettings } from '../export/export-picture.ts'
import { fileHandleSink } from '../export/file-handle-sink.ts'
import { openStripPackers } from '../export/strip-packers.ts'
import type { Supplies } from '../operations/define.ts'
import type { ExposureMetadata, FrameFacts, SensorData } from '../frame/frame.ts'
import { describe } from '../pipeline/describe.ts'
import { finishedPicture } from './finished-picture.ts'

export interface ExportOrder {
  readonly sensor: SensorData
  readonly facts: FrameFacts
  readonly metadata: ExposureMetadata
  readonly chain: Chain
  readonly supplies: Supplies
  readonly settings: ExportSettings
  readonly destination: FileSystemFileHandle | 'download'
}

const abort = new AbortController()

/** Writes the file; resolves with its content where it is to be downloaded, else null. */
async function run(order: ExportOrder, onProgress: (fraction: number) => void): Promise<Blob | null> {
  const { sensor, facts, metadata, chain, supplies, settings, destination } = order
  const collected = destination === 'download' ? blobSink() : null
  const packers = openStripPackers()
  try {
    await exportPicture({
      ...settings,
      ...packers,
      picture: finishedPicture(sensor, describe(chain, facts, { space: settings.space, supplies })),
      metadata,
      sink: collected ?? (await fileHandleSink(destination as FileSystemFileHandle)),
      signal: abort.signal,
      onProgress,
    })
    return collected?.file() ?? null
  } finally {
    packers.close()
  }
}

const exportWorker = { run, cancel: () => abort.abort() }
export type ExportWorker = typeof exportWorker

expose(exportWorker)
