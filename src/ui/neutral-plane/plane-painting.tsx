// The ground of the pad: at every point what a patch becomes in the finished picture with the neutral there. Coarsely at once, then
// finely a few rows at a time, so that the interface thread is never held up.
import { useEffect, useRef } from 'react'

import type { NeutralOutlook } from '../../workbench/neutral-outlook.ts'
import { gainsAt, type PadSize, type PlaneView } from './plane-view.ts'

/** Edges of painted cells in CSS pixels, coarse and fine; between their middles the browser blends (our choice). */
const coarsePx = 16
const finePx = 4
/** Time one turn of fine painting may take, in ms (our choice). */
const turnMs = 6

interface PaintingProps {
  readonly outlook: NeutralOutlook
  readonly patch: readonly number[]
  readonly view: PlaneView
  readonly size: PadSize
}

/** Cells of an edge over the pad, painted row by row. */
function startCells({ outlook, patch, view, size }: PaintingProps, edgePx: number) {
  const columns = Math.ceil(size.width / edgePx)
  const rows = Math.ceil(size.height / edgePx)
  const image = new ImageData(columns, rows)
  return {
    image,
    rows,
    paintRow(row: number) {
      for (let column = 0; column < columns; column++) {
        const gains = gainsAt(view, size, (column + 0.5) * edgePx, (row + 0.5) * edgePx)
        const [red, green, blue] = outlook.paint(patch, gains)
        image.data.set([red * 255, green * 255, blue * 255, 255], (row * columns + column) * 4)
      }
    },
  }
}

/** Lays the cells over the pad, blended. */
function layOut(canvas: HTMLCanvasElement, image: ImageData, edgePx: number): void {
  const cells = new OffscreenCanvas(image.width, image.height)
  cells.getContext('2d')!.putImageData(image, 0, 0)
  const context = canvas.getContext('2d')!
  context.imageSmoothingQuality = 'high'
  const edge = edgePx * devicePixelRatio
  context.drawImage(cells, 0, 0, image.width * edge, image.height * edge)
}

export function PlanePainting({ outlook, patch, view, size }: PaintingProps) {
  const canvas = useRef<HTMLCanvasElement>(null)
  useEffect(() => {
    const element = canvas.current!
    const coarse = startCells({ outlook, patch, view, size }, coarsePx)
    for (let row = 0; row < coarse.rows; row++) coarse.paintRow(row)
    layOut(element, coarse.image, coarsePx)

    const fine = startCells({ outlook, patch, view, size }, finePx)
    let row = 0
    let turn = requestAnimationFrame(function paint() {
      const until = performance.now() + turnMs
      while (row < fine.rows && performance.now() < until) fine.paintRow(row++)
      if (row < fine.rows) turn = requestAnimationFrame(paint)
      else layOut(element, fine.image, finePx)
    })
    return () => cancelAnimationFrame(turn)
  }, [outlook, patch, view, size])
  return (
    <canvas
      ref={canvas}
      className="plane-painting"
      width={Math.round(size.width * devicePixelRatio)}
      height={Math.round(size.height * devicePixelRatio)}
      aria-hidden="true"
    />
  )
}
