// Columns of sun and shade with a hard edge between, over bands of four materials: what a halo is measured on.
import { makeCellGrid } from '../../src/frame/cell-grid.ts'
import { normalNumbers } from '../support/synthetic-sensor.ts'
import { type FilterNm, light, mix, recording, reflectance, type SensorName, times } from './camera.ts'
import { pickShade } from './picked-shade.ts'
import { height, width } from './scene.ts'

const bands = ['concrete_road', 'grass_green_b', 'limestone', 'sand_dry_b']
const noise = { fullScaleElectrons: 20_000, readNoiseElectrons: 3 }
/** Rows of the first band that lie well away from the second. */
const [firstRow, endRow] = [10, Math.floor(height / bands.length) - 10]

/**
 * Distance in stops between the gains of every column's concrete and those of the light it lies in, as a mean over its rows;
 * with noise of photons and reading from `seed`, or without any for null. The concrete is picked in both lights.
 */
export function haloOf(sensor: SensorName, filterNm: FilterNm, seed: number | null): number[] {
  const record = recording(sensor, filterNm)
  const sun = light('sun_direct_AM15')
  const ambient = mix([1, light('sky_diffuse_clear')], [0.05, times(sun, reflectance('concrete_road'))])
  const colours = bands.map((name) =>
    [mix([1, sun], [1, ambient]), ambient].map((light) => record(times(light, reflectance(name)))),
  )
  const normal = normalNumbers(seed ?? 0)
  const { fullScaleElectrons: full, readNoiseElectrons: read } = noise
  const noisy = (value: number) =>
    seed === null ? value : value + (normal() * Math.sqrt(value * full + read * read)) / full
  const rgba = new Float32Array(width * height * 4)
  for (let i = 0; i < width * height; i++) {
    const band = colours[Math.floor((Math.floor(i / width) / height) * bands.length)]
    const rgb = band[i % width < width / 2 ? 0 : 1].map(noisy)
    rgba.set([...rgb, Math.max(...rgb)], i * 4)
  }
  const overview = { width, height, rgba, scale: 2 }
  const y = 0.5 / bands.length
  const [inSun, inShade] = colours[0]
  const { shade, added } = pickShade(
    { overview, noise, grid: makeCellGrid(overview, noise, 1) },
    { rgb: inSun, place: { x: 0.25, y } },
    { rgb: inShade, place: { x: 0.75, y } },
  )
  return Array.from({ length: width }, (_, x) => {
    let sum = 0
    for (let row = firstRow; row < endRow; row++) sum += shade[row * width + x] / (endRow - firstRow)
    return Math.abs(sum - (x < width / 2 ? 0 : 1)) * Math.hypot(...added)
  })
}
