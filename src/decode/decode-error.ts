// Why a file could not be opened, as a sentence for people: what, which file, why, what to do.

export type DecodeFailure =
  | {
      readonly kind:
        | 'unreadable'
        | 'empty'
        | 'not raw'
        | 'truncated'
        | 'damaged'
        | 'memory'
        | 'no shared memory'
        | 'no decoder'
        | 'too small'
        | 'no scale'
    }
  | { readonly kind: 'too big'; readonly width: number; readonly height: number }
  | { readonly kind: 'unsupported packing' }
  /** The sensor is something other than a regular array of red, green and blue. */
  | { readonly kind: 'unsupported sensor'; readonly what: string }
  /** A JPEG or TIFF that is not plain red, green and blue, or grey. */
  | { readonly kind: 'unsupported picture'; readonly what: string }
  /** The decoder said something that has no sentence of its own. */
  | { readonly kind: 'other'; readonly words: string }

function reasonOf(failure: DecodeFailure): string {
  switch (failure.kind) {
    case 'unreadable':
      return 'can no longer be read: it was moved or changed, or its card was taken out; open it again'
    case 'empty':
      return 'is empty; copy it from the card again'
    case 'not raw':
      return 'is no photograph of a known kind; open the camera’s raw file, a DNG made from it, a JPEG or a TIFF'
    case 'truncated':
      return 'ends before its picture does; copy it from the card again'
    case 'damaged':
      return 'is damaged: its picture cannot be unpacked; copy it from the card again'
    case 'memory':
      return 'needs more memory than this device gives; close other pages and programs and open it again'
    case 'no shared memory':
      return 'cannot be decoded in this browser, which gives a page no shared memory; use a current browser, and open this page over https or from this computer'
    case 'no decoder':
      return 'could not be decoded, because the part of this page that decodes did not load; reload the page'
    case 'too small':
      return 'holds a picture smaller than one cell of its sensor, so there is nothing to show; open another file'
    case 'no scale':
      return 'states a white that is not above its black, so its codes mean nothing; copy it from the card again'
    case 'too big':
      return `claims ${failure.width} × ${failure.height} pixels, more than can be decoded; if that is wrong the file is damaged: copy it from the card again`
    case 'unsupported packing':
      return 'packs its picture in a way that cannot be unpacked here; save it as a losslessly compressed DNG and open that'
    case 'unsupported sensor':
      return `comes from a sensor with ${failure.what}, which is not understood here; save it as a linear DNG and open that`
    case 'unsupported picture':
      return `holds ${failure.what}, which is not read here; save it in red, green and blue as a JPEG, or as a TIFF with 8 or 16 bits, and open that`
    case 'other':
      return `could not be decoded (the decoder says: ${failure.words}); copy it from the card again`
  }
}

export class DecodeError extends Error {
  override readonly name = 'DecodeError'
  readonly fileName: string
  readonly failure: DecodeFailure

  constructor(fileName: string, failure: DecodeFailure) {
    super(`“${fileName}” ${reasonOf(failure)}.`)
    this.fileName = fileName
    this.failure = failure
  }
}
