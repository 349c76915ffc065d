// How far each place of a frame lies in shade, so that a second neutral can rule there. It follows colour and not the true
// share of sun: what has to be neutral in a penumbra is its colour, and a true share would do worse there.
import type { Overview } from '../../frame/frame.ts'
import { colourOfLevel } from './colour-of-level.ts'
import { guidedFilter } from './guided-filter.ts'
import { areTwoLights, lightDistance, type LightMark } from './light-marks.ts'
import { makeLightPlane, meansOverCells } from './light-plane.ts'
import { findMaterials } from './shade-by-material.ts'
import { applyStrokes, type Stroke } from './strokes.ts'
import { twinEvidence } from './twin-evidence.ts'

export interface Mask {
  readonly width: number
  readonly height: number
  /** 0 sun … 1 shade, row by row. */
  readonly plane: Float32Array
}

export interface ShadeRequest {
  readonly overview: Overview
  readonly sun: LightMark
  readonly shade: LightMark
  /**
   * How far each overview pixel is sky, 0…1: it has the colour of shade, which it lights, but no neutral of shade is meant for it.
   * Asked with log2 of red that the frame's materials have in shade.
   */
  readonly sky?: (shadeLevel: number) => Float32Array
}

/** What the frame itself tells of its shade, before anybody corrects it. */
export interface JudgedShade {
  readonly width: number
  readonly height: number
  /** 0 sun … 1 shade of each cell, uneven as cells are. */
  readonly share: Float32Array
  /** Smooths along the edges of light, into 0…1. */
  smooth(plane: Float32Array): Float32Array
}

/** Distances in stops of colour and level at which each counts fully (tuned by simulation, as all constants here). */
const colourCounts = 0.3
const levelCounts = 1.2
/**
 * How much brighter than what was picked the frame's materials may be, in stops: asphalt is picked beside leaves and bright walls,
 * and measured against it they would count as lit even in shade. Of what the frame's brightest tenth allows, the one by which fewest
 * materials explain the frame is taken.
 */
const brighterStops = [0, 0.7, 1.4, 2.1]
const halfStep = 0.35
const brightestFrom = 0.9
/** One cell of so many is asked for that. */
const fewEvery = 7
/** Weight and limit of the evidence from twins, and the slope of the mask across its middle. */
const twinWeight = 0.15
const twinLimit = 4
const steepness = 1.5
/** Radius of the edge-aware smoothing as a share of the width, and what it takes for an edge in stops². */
const guideRadius = 1 / 100
const guideEpsilon = 0.04
/** Level in stops below that of the shade at which noise of dark cells ends to guide. */
const darkBelowShade = 6

const clamp = (value: number, low: number, high: number) => Math.min(Math.max(value, low), high)

/** The shade of a frame, or null where the marks do not tell two lights apart: then one neutral serves. */
export function judgeShade({ overview, sun, shade, sky }: ShadeRequest): JudgedShade | null {
  if (!areTwoLights(sun, shade)) return null
  const light = makeLightPlane(overview)
  const { width, height, log2Red, u, v } = light
  const distance = lightDistance(sun, shade)
  const levelStep = shade[2] - sun[2]
  const direction = [(shade[0] - sun[0]) / distance, (shade[1] - sun[1]) / distance]
  const along = u.map((value, i) => (value - sun[0]) * direction[0] + (v[i] - sun[1]) * direction[1])
  const twins = twinEvidence(light, along, distance, levelStep)

  const ofLevel = colourOfLevel(sun, shade)
  const colourWeight = (distance / colourCounts) ** 2
  const levelWeight = (levelStep / levelCounts) ** 2
  const darkest = shade[2] - darkBelowShade
  const level = log2Red.map((value) => Math.max(value, darkest) - sun[2])
  // As level and colour of one material go from light to light: along such a guide a penumbra keeps its course.
  const guide = level.map((value) => (value + levelStep * ofLevel(value / levelStep)) / 2)
  const radius = Math.max(1, Math.round(width * guideRadius))
  const smooth = (plane: Float32Array) =>
    guidedFilter(plane, guide, width, height, radius, guideEpsilon).map((value) => clamp(value, 0, 1))
  const firstOf = (i: number, brighter: number) => {
    const byLevel = ofLevel((level[i] - brighter) / levelStep)
    const byColour = along[i] / distance
    const known = Number.isFinite(byColour)
    const both = known ? (colourWeight * byColour + levelWeight * byLevel) / (colourWeight + levelWeight) : byLevel
    const z = both + twinWeight * clamp(twins[i], -twinLimit, twinLimit)
    return clamp(steepness * (z - 0.5) + 0.5, 0, 1)
  }
  const few = Int32Array.from({ length: Math.ceil(level.length / fewEvery) }, (_, n) => n * fewEvery)
  const ofFew = { level: Float32Array.from(few, (i) => level[i]), along: Float32Array.from(few, (i) => along[i]) }
  const agreementIf = (brighter: number) => {
    const first = Float32Array.from(few, (i) => firstOf(i, brighter))
    return findMaterials({ ...ofFew, first }, sun, shade).agreement
  }
  const brightest = ofFew.level.toSorted()[Math.floor(brightestFrom * (few.length - 1))]
  const allowed = brighterStops.filter((stops) => stops === 0 || stops <= brightest + halfStep)
  const agreements = allowed.map(agreementIf)
  const brighter = allowed[agreements.indexOf(Math.max(...agreements))]
  const first = smooth(level.map((_, i) => firstOf(i, brighter)))
  const byMaterial = findMaterials({ level, along, first }, sun, shade).ways()
  const skyOfCells = sky && meansOverCells(sky(shade[2] + brighter), overview)
  const share = byMaterial.map((value, i) => value * (1 - (skyOfCells?.[i] ?? 0)))
  return { width, height, share, smooth }
}

/** The mask of a judged shade with a person’s corrections. */
export function correctShade({ width, height, share, smooth }: JudgedShade, strokes: readonly Stroke[]): Mask {
  const mask = share.slice()
  applyStrokes(mask, width, height, strokes)
  return { width, height, plane: smooth(mask) }
}
