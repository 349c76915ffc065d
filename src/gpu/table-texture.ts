// Tables of a description as 32-bit float textures, read with texelFetch only.
import { Data3DTexture, DataTexture, FloatType, RedFormat, RGBAFormat } from 'three'

import type { Table } from '../operations/define.ts'

/** RGB to RGBA, because three-channel 32-bit float textures are not offered in three dimensions. */
function withFourth(rgb: Float32Array): Float32Array<ArrayBuffer> {
  const rgba = new Float32Array((rgb.length / 3) * 4)
  for (let from = 0, to = 0; from < rgb.length; from += 3, to += 4) {
    rgba[to] = rgb[from]
    rgba[to + 1] = rgb[from + 1]
    rgba[to + 2] = rgb[from + 2]
  }
  return rgba
}

export function tableTexture(table: Table): DataTexture | Data3DTexture {
  const texture =
    table.kind === 'plane'
      ? new DataTexture(new Float32Array(table.data), table.width, table.height, RedFormat, FloatType)
      : table.kind === '1d'
        ? new DataTexture(withFourth(table.data), table.width, 1, RGBAFormat, FloatType)
        : new Data3DTexture(withFourth(table.data), table.width, table.width, table.width)
  texture.format = table.kind === 'plane' ? RedFormat : RGBAFormat
  texture.type = FloatType
  texture.needsUpdate = true
  return texture
}
