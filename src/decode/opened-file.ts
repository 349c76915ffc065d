// One file in the decoder: opened, its failures turned into sentences, freed at the end.
import type { Orientation } from '../sensor/orientation.ts'
import { DecodeError } from './decode-error.ts'
import { failureOf } from './failure-of.ts'
import type { LibRaw, LibRawFile, LibRawMetadata, LibRawSettings } from './libraw.ts'

/** What is being decoded. */
export interface RawSource {
  readonly libraw: LibRaw
  readonly fileName: string
  readonly bytes: Uint8Array<ArrayBuffer>
}

export interface OpenedFile {
  readonly file: LibRawFile
  /** As read before unpacking. */
  readonly metadata: LibRawMetadata
}

/** EXIF orientation of LibRaw's flips 0…7. */
const orientations: readonly Orientation[] = [1, 2, 4, 3, 5, 8, 6, 7]

export const orientationOf = ({ flip }: LibRawMetadata): Orientation => orientations[flip] ?? 1

/** Runs decoder calls on a source. @throws DecodeError in place of whatever they throw */
function attempt<T>({ libraw, fileName, bytes }: RawSource, metadata: LibRawMetadata | undefined, work: () => T): T {
  try {
    return work()
  } catch (thrown) {
    if (thrown instanceof DecodeError) throw thrown
    throw new DecodeError(fileName, failureOf(libraw, thrown, bytes, metadata))
  }
}

/** Opens a source, hands it to `use` and frees it. @throws DecodeError */
export function withOpenedFile<T>(source: RawSource, settings: LibRawSettings, use: (opened: OpenedFile) => T): T {
  const file = source.libraw.createFile()
  try {
    const metadata = attempt(source, undefined, () => {
      file.open(source.bytes, settings)
      return file.metadata(true)
    })
    return attempt(source, metadata, () => use({ file, metadata }))
  } finally {
    file.delete()
  }
}
