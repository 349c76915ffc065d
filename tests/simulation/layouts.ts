// Twelve kinds of picture that infrared photographers take, each drawn differently for every seed. What stands where is our
// own invention, from memory of such pictures.
import { below, box, everywhere, leaves, plain, rough, type SceneCanvas, smooth } from './scene-canvas.ts'

type Layout = (c: SceneCanvas) => void

const green = ['grass_green_b', 'leaf_deciduous_b', 'leaf_deciduous_c', 'conifer_b', 'conifer_c']
const stone = ['concrete_road', 'limestone', 'asphalt_old', 'brick_grey', 'lichen_grey']
const bark = 'bark'

const sky = (c: SceneCanvas, line: number, cloudy = c.oneOf([0, 0, 0.25, 0.45, 0.6])) =>
  c.paintSky((_, y) => y < line, cloudy)

function trees(c: SceneCanvas, count: number, base: number, height: number): void {
  for (let i = 0; i < count; i++) {
    const x = c.between(-0.05, 1.55)
    const h = height * c.between(0.6, 1.3)
    c.paint(bark, box(x - 0.012, base - h * 0.4, x + 0.012, base + 0.03), { texture: rough, facing: 0.7 })
    c.paint(c.oneOf(green), c.lump(x, base - h * 0.65, h * 0.55, h * 0.6, 0.18), { texture: leaves, facing: 0.9 })
  }
}

function hills(c: SceneCanvas, line: number, haze: number): void {
  const ridge = c.field(160, 2)
  c.paint(c.oneOf(green), (x, y) => y > line + 0.025 * ridge(x * 400, 7), { texture: rough, haze, facing: 0.8 })
}

/** A path or road that widens towards us. */
function path(c: SceneCanvas, material: string, horizon: number, near: number): void {
  const [from, to] = [c.between(0.4, 1.1), c.between(0.3, 1.2)]
  c.paint(
    material,
    (x, y) => {
      const t = (y - horizon) / (1 - horizon)
      return t > 0.03 && Math.abs(x - from - (to - from) * t) < near * t
    },
    { texture: plain },
  )
}

const landscape: Layout = (c) => {
  const horizon = c.between(0.3, 0.6)
  sky(c, horizon + 0.1)
  hills(c, horizon, c.between(0.15, 0.6))
  c.paint('grass_green_b', below(horizon + 0.05), { texture: leaves })
  trees(c, Math.floor(c.between(2, 7)), horizon + 0.08, c.between(0.15, 0.4))
  if (c.random() < 0.8)
    path(c, c.oneOf(['concrete_road', 'asphalt_old', 'sand_dry_b', 'limestone']), horizon + 0.06, c.between(0.06, 0.25))
}

const forest: Layout = (c) => {
  c.paint(c.oneOf(green), everywhere, { texture: leaves, facing: c.between(0.4, 1) })
  for (let i = 0; i < 5; i++)
    c.paint(c.oneOf(green), c.lump(c.between(0, 1.5), c.between(0, 1), 0.3, 0.25, 0.2), { texture: leaves })
  for (let i = 0, n = c.between(2, 8); i < n; i++) {
    const x = c.between(0, 1.5)
    c.paint(bark, box(x, 0, x + c.between(0.02, 0.09), c.between(0.6, 1)), { texture: rough, facing: 0.6 })
  }
  if (c.random() < 0.7)
    c.paint(
      c.oneOf(stone),
      c.lump(c.between(0.2, 1.3), c.between(0.6, 0.9), c.between(0.05, 0.18), c.between(0.04, 0.1), 0.15),
      { texture: rough, facing: 0.8 },
    )
}

const oneMaterial: Layout = (c) => {
  const main = c.oneOf([...green, 'sand_dry_a', 'brick_red_a', 'wood_pine_new', 'grass_dry_b', 'water_coastal'])
  c.paint(main, everywhere, { texture: green.includes(main) ? leaves : plain })
  for (let i = 0, n = c.between(2, 5); i < n; i++) {
    const material = c.oneOf([...stone, 'wood_pine_new', 'paint_grey_aluminium', 'grass_green_b', 'metal_galvanised'])
    c.paint(
      material,
      c.lump(c.between(0.1, 1.4), c.between(0.1, 0.9), c.between(0.06, 0.16), c.between(0.06, 0.16), 0.1),
      { texture: plain },
    )
  }
}

const skyAndWater: Layout = (c) => {
  const horizon = c.between(0.4, 0.65)
  sky(c, horizon + 0.02)
  hills(c, horizon - 0.03, c.between(0.4, 0.75))
  c.paint(c.oneOf(['water_coastal', 'water_ocean']), below(horizon), { texture: { stops: 0.25, size: 5 } })
  const bank = c.between(0.8, 0.95)
  c.paint(
    c.oneOf(['sand_wet', 'limestone', 'asphalt_old', 'grass_green_b']),
    (x, y) => y > bank + 0.08 * Math.sin(x * 3),
    { texture: rough },
  )
}

const darkWood: Layout = (c) => {
  forest(c)
  path(
    c,
    c.oneOf(['leaf_oak_dried', 'sand_dry_b', 'limestone', 'asphalt_old']),
    c.between(0.4, 0.6),
    c.between(0.1, 0.3),
  )
  for (let i = 0; i < c.sun.length; i++) {
    c.sun[i] *= 0.25
    c.sky[i] *= 0.35
  }
}

const street: Layout = (c) => {
  const horizon = c.between(0.5, 0.65)
  sky(c, horizon)
  for (let x = c.between(-0.2, 0); x < 1.5;) {
    const width = c.between(0.2, 0.5)
    const top = c.between(0.05, 0.45)
    c.paint(
      c.oneOf(['concrete_road', 'brick_red_a', 'brick_red_b', 'brick_grey', 'siding_white_vinyl', 'limestone']),
      box(x, top, x + width, horizon + 0.05),
      { texture: plain, facing: c.between(0.45, 1) },
    )
    for (let y = top + 0.05; y < horizon - 0.05; y += 0.12)
      c.paint('paint_grey_aluminium', box(x + 0.05, y, x + 0.1, y + 0.06), { texture: smooth, facing: 0.4 })
    x += width + c.oneOf([0, 0, 0.1])
  }
  c.paint('asphalt_old', below(horizon + 0.03), { texture: plain })
  c.paint('concrete_road', (x, y) => y > horizon + 0.03 && x < 0.9 - y * 0.8, { texture: plain })
  trees(c, Math.floor(c.between(1, 4)), horizon + 0.06, c.between(0.2, 0.4))
}

const garden: Layout = (c) => {
  const wall = c.between(0.2, 0.4)
  sky(c, wall)
  c.paint(
    c.oneOf(['limestone', 'brick_red_a', 'wood_pine_new', 'siding_white_vinyl', 'concrete_road']),
    box(-1, wall, c.between(0.6, 1.5), 0.62),
    { texture: plain, facing: c.between(0.6, 1) },
  )
  c.paint('grass_green_b', below(0.6), { texture: leaves })
  for (let i = 0; i < 5; i++)
    c.paint(c.oneOf(green), c.lump(c.between(0, 1.5), c.between(0.45, 0.7), 0.16, 0.14, 0.2), { texture: leaves })
  c.paint(
    c.oneOf(['concrete_road', 'brick_grey', 'limestone']),
    box(c.between(0.1, 0.5), c.between(0.75, 0.85), c.between(0.8, 1.4), 0.95),
    { texture: plain },
  )
}

const beach: Layout = (c) => {
  const horizon = c.between(0.25, 0.45)
  sky(c, horizon)
  c.paint('water_ocean', below(horizon), { texture: { stops: 0.25, size: 5 } })
  const edge = c.field(60)
  const shore = horizon + c.between(0.12, 0.25)
  c.paint('foam_surf', (x, y) => y > shore - 0.02 && y < shore + 0.02 + 0.01 * edge(x * 400, 3), { texture: rough })
  c.paint('sand_wet', below(shore + 0.03), { texture: plain })
  c.paint(c.oneOf(['sand_dry_a', 'sand_dry_b']), (x, y) => y > shore + 0.12 + 0.02 * edge(x * 400, 9), {
    texture: plain,
  })
  if (c.random() < 0.6)
    c.paint(c.oneOf(stone), c.lump(c.between(0.2, 1.3), 0.8, c.between(0.08, 0.2), 0.1, 0.15), { texture: rough })
  if (c.random() < 0.5) c.paint('grass_dry_b', c.lump(c.between(0, 1.5), 0.95, 0.3, 0.15, 0.25), { texture: leaves })
}

const mountains: Layout = (c) => {
  const line = c.between(0.25, 0.4)
  sky(c, line + 0.15)
  const ridge = c.field(90)
  c.paint(c.oneOf(['limestone', 'lichen_grey', 'asphalt_old']), (x, y) => y > line + 0.06 * ridge(x * 400, 5), {
    texture: rough,
    haze: c.between(0.1, 0.5),
  })
  if (c.random() < 0.5)
    c.paint(
      'snow_melting',
      (x, y) => y > line + 0.04 + 0.06 * ridge(x * 400, 5) && y < line + 0.12 + 0.05 * ridge(x * 400, y * 400),
      { texture: plain, haze: 0.2 },
    )
  c.paint(c.oneOf(['conifer_b', 'conifer_c']), (x, y) => y > 0.62 + 0.05 * ridge(x * 300, 80), {
    texture: leaves,
    haze: 0.05,
    facing: 0.9,
  })
  c.paint(c.oneOf(['grass_green_b', 'grass_dry_b']), below(0.78), { texture: leaves })
  for (let i = 0; i < 4; i++)
    c.paint(c.oneOf(['limestone', 'lichen_grey']), c.lump(c.between(0, 1.5), c.between(0.75, 0.95), 0.08, 0.05, 0.15), {
      texture: rough,
    })
}

const portrait: Layout = (c) => {
  c.paint(c.oneOf([...green, 'brick_red_a', 'limestone', 'wood_pine_new']), everywhere, {
    texture: leaves,
    facing: 0.8,
  })
  c.paint('grass_green_b', below(0.7), { texture: leaves })
  const x = c.between(0.5, 1)
  c.paint(c.oneOf(['cotton_white', 'wood_pine_new', 'asphalt_old']), c.lump(x, 0.85, 0.22, 0.3, 0.03), {
    texture: plain,
    facing: 0.8,
  })
  c.paint(c.oneOf(['skin_mean', 'skin_light', 'skin_dark']), c.lump(x, 0.42, 0.1, 0.13, 0.02), { texture: smooth })
  c.paint('conifer_c', c.lump(x, 0.33, 0.11, 0.06, 0.08), { texture: rough, facing: 0.4 })
}

const architecture: Layout = (c) => {
  sky(c, 0.5)
  const top = c.between(0.08, 0.3)
  c.paint(
    c.oneOf(['siding_white_vinyl', 'limestone', 'concrete_road', 'wood_pine_new']),
    box(c.between(0, 0.3), top, c.between(1, 1.6), 0.9),
    { texture: smooth, facing: c.between(0.6, 1) },
  )
  c.paint(c.oneOf(['metal_galvanised', 'brick_red_b', 'asphalt_old']), box(0, top - 0.07, 1.5, top + 0.02), {
    texture: plain,
  })
  for (let x = 0.35; x < 1.1; x += 0.22)
    c.paint('paint_grey_aluminium', box(x, 0.4, x + 0.1, 0.6), { texture: smooth, facing: 0.5 })
  c.paint(c.oneOf(['wood_pine_new', 'plywood']), box(0.75, 0.6, 0.9, 0.9), { texture: plain, facing: 0.8 })
  c.paint(c.oneOf(['grass_green_b', 'asphalt_old', 'concrete_road']), below(0.88), { texture: rough })
  for (let i = 0; i < 4; i++)
    c.paint(c.oneOf(green), c.lump(c.between(0, 1.5), 0.85, 0.14, 0.12, 0.2), { texture: leaves })
}

const field: Layout = (c) => {
  const horizon = c.between(0.35, 0.6)
  sky(c, horizon)
  hills(c, horizon - 0.02, c.between(0.3, 0.6))
  c.paint(c.oneOf(['grass_dry_b', 'grass_dry_b', 'leaf_yellow_autumn', 'sand_dry_b']), below(horizon + 0.03), {
    texture: leaves,
  })
  trees(c, Math.floor(c.between(3, 8)), horizon + 0.05, c.between(0.08, 0.25))
  if (c.random() < 0.7)
    c.paint(
      c.oneOf(['wood_pine_new', 'metal_galvanised', 'siding_white_vinyl', 'limestone', 'brick_red_b']),
      box(0.9, horizon - 0.08, 1.15, horizon + 0.06),
      { texture: plain, facing: 0.8 },
    )
}

export const layouts: Readonly<Record<string, Layout>> = {
  landscape,
  forest,
  oneMaterial,
  skyAndWater,
  darkWood,
  street,
  garden,
  beach,
  mountains,
  portrait,
  architecture,
  field,
}
