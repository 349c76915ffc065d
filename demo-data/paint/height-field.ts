// Which point of a landscape every pixel shows. The landscape is one height per ground point, so a column of pixels is one
// ray bundle: it is walked once from near to far and keeps what rises above everything before.
// Distances are exact to a fraction of a pixel and crests are searched for, because torn crests are what betrays a model.
import type { Camera } from './camera.ts'
import type { Band } from './canvas.ts'
import { createSkips, createStations, type Landscape, type Reach } from './landscape.ts'
import type { Size } from './scene.ts'

/** Per pixel of a band: distance Z in metres of what covers its lower part and, where an edge runs through it, what is behind. */
export interface Sight {
  /** Z of the nearer surface, 0 = none. */
  readonly near: Float32Array
  /** Share of the pixel that it covers. */
  readonly share: Float32Array
  /** Z of the surface behind the edge, 0 = none. */
  readonly behind: Float32Array
  /** Share of the pixel covered by either. */
  readonly covered: Float32Array
}

export interface Tracer {
  trace(band: Band): Sight
}

const sameSurface = 0.03
/** The walk starts this far below the band, so that a crest at its lower edge is searched for as in the middle. */
const apronPx = 24

/** Prepares the walk of one landscape (milliseconds); `trace` then answers for any band. */
export function createTracer(size: Size, camera: Camera, landscape: Landscape, reach: Reach): Tracer {
  const { focalPx, centreX, horizonY, eyeM } = camera
  const stations = createStations(camera, reach)
  const skipTo = createSkips(size, camera, landscape, stations)
  return {
    trace(band) {
      const n = (band.y1 - band.y0) * band.width
      const sight = {
        near: new Float32Array(n),
        share: new Float32Array(n),
        behind: new Float32Array(n),
        covered: new Float32Array(n),
      }
      const { near, share, behind, covered } = sight
      const { y0, y1, width } = band
      let across = 0
      let column = 0
      const rowAt = (z: number) => horizonY - (focalPx * (landscape.height(across * z, z, z / focalPx) - eyeM)) / z

      const cover = (y: number, z: number, part: number): void => {
        const i = (y - y0) * width + column
        if (share[i] === 0) {
          near[i] = z
          share[i] = part
        } else if (behind[i] === 0 && z - near[i] < near[i] * sameSurface) share[i] += part
        else if (behind[i] === 0) behind[i] = z
        covered[i] = Math.min(1, covered[i] + part)
      }

      const solve = (row: number, za: number, ra: number, zb: number, rb: number, bent: boolean): number => {
        let t = (ra - row) / (ra - rb)
        let z = 1 / (1 / za + (1 / zb - 1 / za) * t)
        if (!bent) return z
        const r = rowAt(z)
        if (r > row) {
          t = (r - row) / Math.max(1e-6, r - rb)
          z = 1 / (1 / z + (1 / zb - 1 / z) * Math.min(1, t))
        } else {
          t = (ra - row) / Math.max(1e-6, ra - r)
          z = 1 / (1 / za + (1 / z - 1 / za) * Math.min(1, t))
        }
        return z
      }

      let crestZ = 0
      let crestRow = 0
      /** Sets the highest point between `left` and `right`, starting from `middle`, to a fifth of a pixel. */
      const findCrest = (left: number, middle: number, middleRow: number, right: number): void => {
        crestZ = middle
        crestRow = middleRow
        let lo = left
        let hi = right
        for (let turn = 0; turn < 9; turn++) {
          const zl = (lo + crestZ) / 2
          const zr = (crestZ + hi) / 2
          const rl = rowAt(zl)
          const rr = rowAt(zr)
          if (rl < crestRow && rl <= rr) {
            hi = crestZ
            crestZ = zl
            crestRow = rl
          } else if (rr < crestRow) {
            lo = crestZ
            crestZ = zr
            crestRow = rr
          } else {
            if (rl - crestRow < 0.2 && rr - crestRow < 0.2) {
              crestZ = zl
              break
            }
            lo = zl
            hi = zr
          }
        }
      }

      const fill = (za: number, ra: number, zb: number, rb: number, low: number): void => {
        const bottom = Math.min(low, y1)
        const high = Math.max(rb, y0)
        if (high >= bottom) return
        let bent = false
        if (ra - rb > 1) {
          const middle = 2 / (1 / za + 1 / zb)
          bent = Math.abs(rowAt(middle) - (ra + rb) / 2) > 0.3
        }
        for (let y = Math.ceil(bottom) - 1; y >= Math.floor(high); y--) {
          const from = Math.max(y, high)
          const to = Math.min(y + 1, bottom)
          if (to > from) cover(y, solve((from + to) / 2, za, ra, zb, rb, bent), to - from)
        }
      }

      for (column = 0; column < width; column++) {
        across = (column + 0.5 - centreX) / focalPx
        const start = skipTo(column, y1 + apronPx)
        let top = start === 0 ? Infinity : y1 + apronPx
        let za = stations[start]
        let ra = rowAt(za)
        if (start === 0) fill(za, ra + 1, za, ra, top)
        top = Math.min(top, ra)
        let zb = za
        let rb = ra
        for (let k = start + 1; k <= stations.length && top > y0; k++) {
          const z = k < stations.length ? stations[k] : zb * 1.0001
          const r = k < stations.length ? rowAt(z) : Infinity
          if (r > rb && rb <= ra && rb < top + 3) {
            findCrest(za, zb, rb, z)
            if (crestZ > zb) fill(za, ra, zb, rb, top)
            const fromB = crestZ > zb
            fill(fromB ? zb : za, fromB ? rb : ra, crestZ, crestRow, Math.min(top, fromB ? rb : top))
            top = Math.min(top, crestRow)
          } else if (rb < top) {
            fill(za, ra, zb, rb, top)
            top = rb
          }
          za = zb
          ra = rb
          zb = z
          rb = r
        }
      }
      return sight
    },
  }
}
