// The bare module below libraw-wasm's own worker, as far as it is used here. Its package types only the worker's class.
declare module 'libraw-wasm/dist/libraw.js' {
  import type { LibRawFile } from './libraw.ts'

  export interface LibRawModule {
    readonly LibRaw: new () => LibRawFile
  }
  export interface LibRawSetting {
    readonly wasmMemory: WebAssembly.Memory
    /** Bytes of libraw.wasm; without them the module fetches the file beside itself. */
    readonly wasmBinary?: Uint8Array
    readonly printErr: (line: string) => void
  }
  export default function init(setting: LibRawSetting): Promise<LibRawModule>
}
