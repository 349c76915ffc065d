// Plants in space before they are lit: leaves and limbs as flat records in metres, world axes (X right, Y up, Z away).
// Flat arrays because one scene holds several hundred thousand leaves.

/** Numbers per leaf: base x y z, axis to the tip x y z (its length is the leaf's), unit normal x y z, half-width, tint, kind. */
export const leafStride = 12
/** Numbers per limb: start x y z and radius, end x y z and radius. */
export const limbStride = 8

export interface Foliage {
  leaves: Float32Array
  leafCount: number
  limbs: Float32Array
  limbCount: number
}

export function createFoliage(): Foliage {
  return {
    leaves: new Float32Array(leafStride * 1024),
    leafCount: 0,
    limbs: new Float32Array(limbStride * 256),
    limbCount: 0,
  }
}

function grown(data: Float32Array, needed: number): Float32Array {
  if (needed <= data.length) return data
  const larger = new Float32Array(Math.max(needed, data.length * 2))
  larger.set(data)
  return larger
}

/**
 * Adds a leaf with its base at (x, y, z) and axis (ax, ay, az) in metres. The normal need not be unit nor square to the axis.
 * `tint` −1…1 and `kind` (a small integer) are for the scene to read when it chooses the colour.
 */
export function addLeaf(
  foliage: Foliage,
  x: number,
  y: number,
  z: number,
  ax: number,
  ay: number,
  az: number,
  nx: number,
  ny: number,
  nz: number,
  halfWidthM: number,
  tint = 0,
  kind = 0,
): void {
  const at = foliage.leafCount * leafStride
  foliage.leaves = grown(foliage.leaves, at + leafStride)
  const d = foliage.leaves
  const along = (nx * ax + ny * ay + nz * az) / (ax * ax + ay * ay + az * az + 1e-12)
  const mx = nx - along * ax
  const my = ny - along * ay
  const mz = nz - along * az
  const n = Math.sqrt(mx * mx + my * my + mz * mz) || 1
  d[at] = x
  d[at + 1] = y
  d[at + 2] = z
  d[at + 3] = ax
  d[at + 4] = ay
  d[at + 5] = az
  d[at + 6] = mx / n
  d[at + 7] = my / n
  d[at + 8] = mz / n
  d[at + 9] = halfWidthM
  d[at + 10] = tint
  d[at + 11] = kind
  foliage.leafCount++
}

/** Adds a straight limb between two points with a radius in metres at each end. */
export function addLimb(
  foliage: Foliage,
  x0: number,
  y0: number,
  z0: number,
  r0: number,
  x1: number,
  y1: number,
  z1: number,
  r1: number,
): void {
  const at = foliage.limbCount * limbStride
  foliage.limbs = grown(foliage.limbs, at + limbStride)
  foliage.limbs.set([x0, y0, z0, r0, x1, y1, z1, r1], at)
  foliage.limbCount++
}
