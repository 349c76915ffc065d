// Materials a scene can name: each a weighted sum of measured reflectances. The order gives the id in the ground-truth plane.
// Materials missing from the library are mixes tuned by eye so that their infrared-to-red ratio stays plausible.
import type { ReflectanceName } from '../spectra.ts'

export type Mix = Partial<Record<ReflectanceName, number>>

/** Reflectance mixes by material name. `white` is the perfect diffuser (18 % card ÷ .18); `nothing` is open sky. */
export const materialMixes = {
  nothing: {},
  white: { grey_card_ideal: 1 / 0.18 },
  grey: { grey_card_ideal: 1 },
  cloud: { cloud_sunlit: 1 },
  grass: { grass_green_b: 1 },
  dryGrass: { grass_dry_b: 1 },
  leaf: { leaf_deciduous_b: 1 },
  mapleLeaf: { leaf_deciduous_c: 1 },
  yellowLeaf: { leaf_yellow_autumn: 1 },
  driedLeaf: { leaf_oak_dried: 1 },
  conifer: { conifer_b: 1 },
  pine: { conifer_c: 1 },
  bark: { leaf_oak_dried: 0.3, asphalt_old: 0.65 },
  birchBark: { limestone: 0.35, cotton_white: 0.65 },
  soil: { asphalt_old: 0.6, sand_wet: 0.55 },
  gravel: { limestone: 0.35, asphalt_old: 0.6 },
  sand: { sand_dry_b: 1 },
  sandPale: { sand_dry_a: 1 },
  sandWet: { sand_wet: 1 },
  concrete: { concrete_road: 1 },
  asphalt: { asphalt_old: 1 },
  limestone: { limestone: 1 },
  rock: { asphalt_old: 0.6, limestone: 0.25 },
  brick: { brick_red_a: 1 },
  brickDark: { brick_red_b: 1 },
  plaster: { limestone: 0.8, siding_white_vinyl: 0.42 },
  wood: { wood_pine_new: 1 },
  timber: { wood_pine_new: 0.3, asphalt_old: 0.6 },
  metal: { metal_galvanised: 1 },
  rust: { brick_red_b: 0.6, asphalt_old: 0.3 },
  paint: { siding_white_vinyl: 1 },
  water: { water_coastal: 1 },
  waterDeep: { water_ocean: 1 },
  foam: { foam_surf: 1 },
  lichen: { lichen_grey: 1 },
  lichenOrange: { lichen_orange: 1 },
  cotton: { cotton_white: 1 },
} satisfies Record<string, Mix>

export type MaterialName = keyof typeof materialMixes

/** Names in id order: `materialNames[id]` is what the ground-truth plane holds. */
export const materialNames = Object.keys(materialMixes) as MaterialName[]
