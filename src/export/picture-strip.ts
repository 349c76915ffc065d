// The finished picture as it arrives for writing: whole rows from top to bottom, already encoded and dithered to depth.
// Whoever renders (a graphics tile exporter, the CPU engine) is given from outside; a whole picture never exists at once.

export type BitDepth = 8 | 16

/** Rows `top` … `top + rows − 1`; samples are interleaved RGB, `rows · width · 3` of them. The receiver may change them. */
export interface PictureStrip {
  readonly top: number
  readonly rows: number
  readonly samples: Uint8Array<ArrayBuffer> | Uint16Array<ArrayBuffer>
}

export interface StripRequest {
  readonly bits: BitDepth
  /** Rows of every strip but the last, which holds what is left. */
  readonly rowsPerStrip: number
  readonly signal: AbortSignal
}

export interface FinishedPicture {
  readonly width: number
  readonly height: number
  /** Strips in order, without gap or overlap. */
  renderStrips(request: StripRequest): AsyncIterable<PictureStrip>
}

/** Bytes of the whole picture before compression. */
export function pictureBytes({ width, height }: FinishedPicture, bits: BitDepth): number {
  return width * height * 3 * (bits / 8)
}
