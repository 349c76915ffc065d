// Where an exported file goes. A file appears under its final name only in `finish`; `abandon` leaves nothing behind.

export interface Sink {
  /** Adds bytes at the end. */
  append(bytes: Uint8Array<ArrayBuffer>): Promise<void>
  /** Replaces bytes that were written before. */
  replace(position: number, bytes: Uint8Array<ArrayBuffer>): Promise<void>
  finish(): Promise<void>
  abandon(): Promise<void>
}
