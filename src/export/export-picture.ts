// One finished picture into one file: format, profile and metadata around strips that a renderer given from outside makes.
// Whatever goes wrong, or when it is cancelled, the sink keeps nothing.
import { outputSpaceById, type OutputSpaceId } from '../colour/output-space.ts'
import type { ExposureMetadata } from '../frame/frame.ts'
import { iccProfile } from './icc-profile.ts'
import type { PackStrip } from './pack-strip.ts'
import type { FinishedPicture } from './picture-strip.ts'
import type { Sink } from './sink.ts'
import { softwareName } from '../frame/software-name.ts'
import { writeJpeg } from './write-jpeg.ts'
import { writeTiff } from './write-tiff.ts'

export type ExportFormat = 'tiff16' | 'tiff8' | 'jpeg'

export interface ExportSettings {
  readonly format: ExportFormat
  /** The space the strips are encoded in; the profile follows it. */
  readonly space: OutputSpaceId
  /** 1…100, JPEG only. */
  readonly quality: number
  /** Whether a known location goes into the file. */
  readonly keepLocation: boolean
}

export interface ExportJob extends ExportSettings {
  readonly picture: FinishedPicture
  readonly metadata: ExposureMetadata
  readonly sink: Sink
  readonly packStrip: PackStrip
  /** Strips packed at the same time, TIFF only. */
  readonly packers: number
  readonly signal: AbortSignal
  /** 0…1. */
  onProgress(fraction: number): void
}

/**
 * Renders and writes the file and finishes the sink.
 * @throws RangeError for a picture its format cannot hold, the signal's reason when cancelled, or what renderer and sink
 * throw; the sink is abandoned first.
 */
export async function exportPicture(job: ExportJob): Promise<void> {
  const about = {
    ...job,
    profile: iccProfile(outputSpaceById(job.space)),
    software: softwareName,
    isSrgb: job.space === 'srgb',
  }
  try {
    job.signal.throwIfAborted()
    if (job.format === 'jpeg') await writeJpeg(about)
    else await writeTiff({ ...about, bits: job.format === 'tiff16' ? 16 : 8 })
    job.signal.throwIfAborted()
    await job.sink.finish()
  } catch (reason) {
    await job.sink.abandon()
    throw reason
  }
}
