// The jobs of the export tests: everything stated, so that a test changes only what it is about.
import { availableParallelism } from 'node:os'
import { fileSink } from '../../src/commands/file-sink.ts'
import { exportPicture, type ExportJob } from '../../src/export/export-picture.ts'
import { packStrip } from '../../src/export/pack-strip.ts'
import { syntheticPicture } from '../support/synthetic-picture.ts'

/** An invented camera and photographer. */
const metadata = {
  make: 'Fennel',
  model: 'Fennel Two',
  lens: 'Quill 35mm F2.8',
  iso: 400,
  exposureTimeS: 0.004,
  apertureF: 5.6,
  focalLengthMm: 35,
  takenAt: '2026:05:17 14:03:22',
  artist: 'Åse Ødegård-Example',
  copyright: 'Free to use in tests',
  description: 'Meadow at Heron Mere',
  gps: { latitudeDeg: -41.2905, longitudeDeg: 12.5011, altitudeM: 86.5 },
}

export async function exportToFile(path: string, changes: Partial<ExportJob> = {}): Promise<void> {
  await exportPicture({
    picture: syntheticPicture(301, 203),
    format: 'tiff16',
    space: 'srgb',
    quality: 92,
    keepLocation: false,
    metadata,
    sink: changes.sink ?? (await fileSink(path)),
    packStrip,
    packers: availableParallelism(),
    signal: new AbortController().signal,
    onProgress: () => undefined,
    ...changes,
  })
}
