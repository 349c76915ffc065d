// Demosaiced tiles of the sensor for views that need more than the overview: made when seen, a few kept.
// A tile made at other gains is still shown until its turn comes, because it is sharp and off only in fine colour detail.
import { HalfFloatType, LinearFilter, type RawShaderMaterial, WebGLRenderTarget } from 'three'

import place from '../../shaders/place.glsl?raw'
import tileText from '../../shaders/tile.glsl?raw'
import type { CodeSource } from './code-source.ts'
import type { CodeTile } from './code-tile.ts'
import { type Pass, setUniforms, type Size } from './pass.ts'
import type { Patch } from './patch.ts'
import { writePlacement } from './place-uniforms.ts'
import type { TileRequest, TileSpot } from './tile-spots.ts'

/** Demosaiced sensor pixels around a tile, so that filtering at its edge sees its neighbours; whole texels at every level. */
const margin = 4
/** Tiles kept beyond those in view, in bytes (our choice). */
const keptBytes = 256 * 2 ** 20

interface Tile {
  readonly codes: CodeTile
  /** The demosaiced pixels; null where the context cannot render to float and codes are demosaiced at every draw. */
  readonly target: WebGLRenderTarget | null
  /** Gains it was made at. */
  gains: readonly number[]
}

export interface Cover {
  readonly patches: readonly Patch[]
  /** Tiles in view that are missing or made at other gains. */
  readonly unfinished: number
}

export interface TileStore {
  /** What makes tiles. */
  readonly materials: readonly RawShaderMaterial[]
  /** Patches for all spots in view, after making tiles until `budgetPx` sensor pixels are spent; `standIn` shows the missing ones. */
  cover(request: TileRequest, budgetPx: number): Cover
  dispose(): void
}

function disposeTile({ codes, target }: Tile): void {
  codes.texture.dispose()
  target?.dispose()
}

const tileBytes = ({ codes, target }: Tile) => codes.bytes + (target ? target.width * target.height * 8 : 0)

function createTarget(side: number): WebGLRenderTarget {
  const filters = { minFilter: LinearFilter, magFilter: LinearFilter }
  return new WebGLRenderTarget(side, side, { type: HalfFloatType, depthBuffer: false, ...filters })
}

export function createTileStore(pass: Pass, sensor: Size, source: CodeSource, tiles16F: boolean): TileStore {
  const tiles = new Map<string, Tile>()
  const material = pass.material([place, ...source.text, tileText])

  const edgesOf = ({ x, y, size }: TileSpot) => ({
    left: x,
    top: y,
    right: Math.min(x + size, sensor.width),
    bottom: Math.min(y + size, sensor.height),
  })

  function load(spot: TileSpot): Tile {
    const { left, top, right, bottom } = edgesOf(spot)
    const codes = source.load({ x: left, y: top, width: right - left, height: bottom - top }, margin)
    return { codes, target: tiles16F ? createTarget((spot.size + 2 * margin) >> spot.level) : null, gains: [] }
  }

  const isCurrent = ({ gains }: Tile, wanted: readonly number[]) =>
    !source.mixesChannels || gains.every((gain, i) => gain === wanted[i])

  function make(tile: Tile, { x, y, level }: TileSpot, gains: readonly [number, number, number]): void {
    tile.gains = gains
    if (!tile.target) return
    const zoom = 1 / 2 ** level
    writePlacement(material.uniforms, {
      left: (margin - x) * zoom,
      top: (margin - y) * zoom,
      zoom,
      frameWidth: sensor.width,
      frameHeight: sensor.height,
      screenHeight: null,
    })
    source.write(material.uniforms, tile.codes, gains)
    setUniforms(material.uniforms, { level })
    pass.draw(material, tile.target, tile.target)
  }

  function patchOf(spot: TileSpot, tile: Tile | undefined, { nearest, standIn }: TileRequest): Patch {
    const edges = edgesOf(spot)
    if (!tile) return { ...edges, source: standIn }
    if (!tile.target) return { ...edges, source: { kind: 'codes', tile: tile.codes } }
    const { texture } = tile.target
    const place = { x: spot.x - margin, y: spot.y - margin, scale: 2 ** spot.level, level: 0 }
    return { ...edges, source: { kind: 'texture', texture, ...place, nearest } }
  }

  function dropOldest(inView: ReadonlySet<string>): void {
    let bytes = [...tiles.values()].reduce((sum, tile) => sum + tileBytes(tile), 0)
    for (const [key, tile] of tiles) {
      if (bytes <= keptBytes) return
      if (inView.has(key)) continue
      disposeTile(tile)
      tiles.delete(key)
      bytes -= tileBytes(tile)
    }
  }

  return {
    materials: tiles16F ? [material, ...source.steps] : [],
    cover(request, budgetPx) {
      let leftPx = budgetPx
      let unfinished = 0
      const patches = request.spots.map((spot) => {
        let tile = tiles.get(spot.key)
        if (!tile || !isCurrent(tile, request.gains)) {
          if (leftPx > 0) make((tile ??= load(spot)), spot, request.gains)
          else unfinished++
          leftPx -= spot.size ** 2
        }
        if (tile) {
          tiles.delete(spot.key)
          tiles.set(spot.key, tile)
        }
        return patchOf(spot, tile, request)
      })
      dropOldest(new Set(request.spots.map(({ key }) => key)))
      return { patches, unfinished }
    },
    dispose() {
      for (const tile of tiles.values()) disposeTile(tile)
      tiles.clear()
    },
  }
}
