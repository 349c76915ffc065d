// A small finished picture on a canvas of exactly its pixels; an even grey of the same shape until there is one.
import { useLayoutEffect, useRef } from 'react'

export interface ThumbnailSize {
  readonly width: number
  readonly height: number
}

/** CSS size of a frame of this aspect inside a box: as wide as the box unless that would make it too high. */
export function thumbnailSize(aspect: number, box: ThumbnailSize): ThumbnailSize {
  const width = Math.round(Math.min(box.width, box.height * aspect))
  return { width, height: Math.max(1, Math.floor(width / aspect)) }
}

export function FinishedThumbnail({ picture, size }: { picture: ImageData | null; size: ThumbnailSize }) {
  const canvas = useRef<HTMLCanvasElement>(null)
  useLayoutEffect(() => {
    if (!picture || !canvas.current) return
    canvas.current.width = picture.width
    canvas.current.height = picture.height
    canvas.current.getContext('2d')?.putImageData(picture, 0, 0)
  }, [picture])
  return <canvas ref={canvas} className="thumbnail" style={size} aria-hidden="true" />
}
