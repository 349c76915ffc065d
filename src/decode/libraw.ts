// The decoder, used below its package's own worker because there every failure comes back as `undefined`. One object per
// file, synchronous calls, our own memory so that the text of an exception can be read.
import init from 'libraw-wasm/dist/libraw.js'
import { wordsOf } from '../text/thrown.ts'

/** What `metadata(true)` tells, as far as it is used here. Width and height are swapped for frames on their side. */
export interface LibRawMetadata {
  readonly width: number
  readonly height: number
  readonly raw_width: number
  readonly raw_height: number
  readonly left_margin: number
  readonly top_margin: number
  /** LibRaw's own code: bit 4 swaps x and y, 2 flips y, 1 flips x. */
  readonly flip: number
  readonly camera_make: string
  readonly camera_model: string
  readonly iso_speed: number
  readonly shutter: number
  readonly aperture: number
  readonly focal_len: number
  /** Seconds; made from the camera's local time as if it were this machine's. */
  readonly timestamp: number
  readonly desc: string
  readonly artist: string
  readonly gps_data: {
    readonly latitude: readonly number[]
    readonly longitude: readonly number[]
    readonly altitude: number
    readonly latref: string | null
    readonly longref: string | null
    readonly altref: number
    readonly gpsparsed: boolean
  }
  readonly color_data: {
    readonly black: number
    readonly maximum: number
    /** Gains R, G, B, G that make daylight grey, of any common size. */
    readonly pre_mul: readonly number[]
    readonly rgb_cam: readonly (readonly number[])[]
  }
  readonly lens: { readonly Lens: string; readonly makernotes: { readonly Lens: string } }
  readonly dng_version: number
  readonly colors: number
  readonly filters: number
  readonly pixel_aspect: number
  readonly raw_inset_crops: readonly {
    readonly cleft: number
    readonly ctop: number
    readonly cwidth: number
    readonly cheight: number
  }[]
}

/** The whole mosaic, masked borders included. Its other fields are those of a crop where one was asked for. */
export interface LibRawMosaic {
  readonly raw_width: number
  readonly raw_height: number
  readonly data: Uint16Array<ArrayBuffer>
}

export interface LibRawImage {
  readonly width: number
  readonly height: number
  readonly colors: number
  readonly data: Uint16Array<ArrayBuffer>
}

export type LibRawSettings = Readonly<Record<string, number | boolean | readonly number[]>>

export interface LibRawFile {
  open(bytes: Uint8Array, settings: LibRawSettings): void
  metadata(full: true): LibRawMetadata
  rawImageData(): LibRawMosaic | undefined
  imageData(): LibRawImage | undefined
  thumbnailData(): { readonly data: Uint8Array<ArrayBuffer>; readonly format: string } | undefined
  delete(): void
}

export interface LibRaw {
  createFile(): LibRawFile
  /** What was printed since the last call: damage that decoding survived. */
  takeMessages(): string[]
  /** LibRaw's code or words inside something thrown by a `LibRawFile`. */
  explain(thrown: unknown): { readonly code: number } | { readonly words: string }
}

/** Pages of 64 KiB that the module was linked for: fewer or more will not link. */
const memoryPages = { initial: 4096, maximum: 32768 }
/** Largest code that LibRaw throws (LibRaw_exceptions, libraw_const.h); anything else there is an object. */
const largestExceptionCode = 12

/** Memory as the module needs it, or null where this environment has no shared memory. */
function sharedMemory(): WebAssembly.Memory | null {
  try {
    return new WebAssembly.Memory({ ...memoryPages, shared: true })
  } catch {
    return null
  }
}

/** Starts the decoder, or null where it cannot run. `wasmBinary` is needed where there is no fetch for it, as in Node. */
export async function startLibRaw(wasmBinary?: Uint8Array): Promise<LibRaw | null> {
  const wasmMemory = sharedMemory()
  if (!wasmMemory) return null
  let messages: string[] = []
  const module = await init({ wasmMemory, wasmBinary, printErr: (line) => messages.push(line) })

  function textAt(address: number): string {
    const bytes = new Uint8Array(wasmMemory!.buffer, address, 400)
    return new TextDecoder().decode(bytes.slice(0, bytes.indexOf(0)))
  }

  return {
    createFile: () => new module.LibRaw(),
    takeMessages() {
      const taken = messages
      messages = []
      return taken
    },
    explain(thrown) {
      const at = (thrown as { excPtr?: number } | null)?.excPtr
      if (!at) return { words: wordsOf(thrown) }
      const view = new DataView(wasmMemory.buffer)
      const code = view.getInt32(at, true)
      if (code >= 0 && code <= largestExceptionCode) return { code }
      // A standard exception keeps its text behind the pointer to its class.
      const words = textAt(view.getUint32(at + 4, true))
      const failed = /failed with code (-\d+)/.exec(words)
      return failed ? { code: Number(failed[1]) } : { words }
    },
  }
}
