// A landscape as one height per ground point, and the plan of a walk through it: the distances at which to look, and how far
// a band of rows may skip ahead because nothing nearer can rise into it.
import type { Camera } from './camera.ts'
import type { Size } from './scene.ts'

export interface Landscape {
  /** Height in metres at X, Z; details smaller than `footprintM` may be left out. */
  height(x: number, z: number, footprintM: number): number
  /** A smooth surface that no height exceeds. It lets a band skip the ground that only lower rows show. */
  ceiling(x: number, z: number): number
}

export interface Reach {
  readonly nearM: number
  readonly farM: number
  /** Step of the walk as a share of the distance: finer for spiky ground. */
  readonly step: number
}

const coarsePx = 16

/** Distances at which the walk looks, the same for every column and band. */
export function createStations(camera: Camera, reach: Reach): Float64Array {
  const stations: number[] = []
  for (let z = reach.nearM; z < reach.farM;) {
    stations.push(z)
    const flat = (4 * z) / (camera.focalPx * Math.abs(camera.eyeM))
    z *= 1 + Math.max(reach.step * 0.25, Math.min(reach.step, flat))
  }
  stations.push(reach.farM)
  return Float64Array.from(stations)
}

/** For coarse cells: the station before which nothing can rise into that row. */
export function createSkips(size: Size, camera: Camera, landscape: Landscape, stations: Float64Array) {
  const columns = Math.ceil(size.width / coarsePx) + 1
  const rows = Math.ceil(size.height / coarsePx) + 1
  const first = new Int32Array(columns * rows).fill(stations.length - 1)
  const stride = 4
  for (let i = 0; i < columns; i++) {
    const across = (i * coarsePx - camera.centreX) / camera.focalPx
    let top = rows
    for (let k = 0; k < stations.length && top > 0; k += stride) {
      const z = stations[k]
      const row = camera.horizonY - (camera.focalPx * (landscape.ceiling(across * z, z) - camera.eyeM)) / z
      const reached = Math.max(0, Math.floor(row / coarsePx) - 1)
      while (top > reached) first[--top * columns + i] = Math.max(0, k - 2 * stride)
    }
  }
  return (x: number, row: number): number => {
    const i = Math.floor(x / coarsePx)
    const at = Math.min(rows - 1, Math.max(0, Math.floor(row / coarsePx))) * columns + i
    return Math.min(first[at], first[at + 1])
  }
}
