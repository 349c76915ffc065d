// Warmth as seen: the gains before a chain that move a finished grey warmer or more magenta, whatever the chain does to
// colours on its way. Solved backwards through the chain itself, because after an exchange of channels or a hue turn no
// fixed direction of gains is “warmer”.
import { workingToOklab } from '../colour/oklab.ts'
import { invert, transform } from '../math/mat3.ts'

export interface AsSeenRequest {
  /** The rest of the chain for one pixel: linear `workingRgb` in and out. */
  readonly finish: (rgb: readonly [number, number, number]) => readonly number[]
  /** Level of the grey that is moved, linear. */
  readonly level: number
  /** Shift in thousandths of OKLab chroma per lightness: about one mired of daylight each. */
  readonly warm: number
  readonly magenta: number
  /** Whether the common gain keeps the finished lightness; 'free' where brightness is held elsewhere: it is then left alone. */
  readonly lightness?: 'kept' | 'free'
}

export interface AsSeen {
  /** Gains in stops, red and blue relative to green. */
  readonly redStops: number
  readonly blueStops: number
  /** Gain of all channels in stops that keeps the finished lightness. */
  readonly commonStops: number
  /** Whether the whole shift can be reached; if not, the gains give the part that can. */
  readonly reached: boolean
}

/** Hue of warm light in OKLab, degrees (daylight from D50 to D100, computed by us); magenta is square to it. */
const warmHueDeg = 80
const [warmA, warmB] = [Math.cos((warmHueDeg * Math.PI) / 180), Math.sin((warmHueDeg * Math.PI) / 180)]
const unit = 0.001
/** Least squares with damping (Levenberg 1944, Marquardt 1963): step of the central difference, longest step and most steps. */
const differenceStops = 0.01
const longestStepStops = 1
const mostSteps = 80
/** Error in OKLab at which the search ends, and below which the shift counts as reached (a tenth of a unit). */
const enough = 1e-6
const reachedBelow = 1e-4
/** Change of OKLab per stop below which a gain changes nothing: black and white, and the rounding of a 32-bit picture. */
const unmoved = 1e-5
/** Largest gain in stops: the last steps towards a colour that a chain can only just show would cost any gain (our choice). */
const largestStops = 6
/** Halvings in the search for the part of a shift that can be reached. */
const halvings = 8
/** Searches at most, each from where the one before came to. */
const rounds = 4

type Gains = readonly [red: number, blue: number, common: number]
type Look = (gains: Gains) => [number, number, number]

const norm = (v: readonly number[]) => Math.hypot(...v)

/** Gains whose look is `target`, from `start`; the best found, with its error. */
function approach(look: Look, target: readonly number[], start: Gains): { gains: Gains; error: number } {
  const miss = (gains: Gains) => look(gains).map((value, i) => value - target[i])
  let gains = start
  let residual = miss(gains)
  let damping = 1e-6
  for (let step = 0; step < mostSteps && norm(residual) > enough; step++) {
    const columns = [0, 1, 2].map((k) => {
      const moved = (by: number) => miss(gains.map((value, i) => (i === k ? value + by : value)) as unknown as Gains)
      const [ahead, behind] = [moved(differenceStops), moved(-differenceStops)]
      return ahead.map((value, i) => (value - behind[i]) / (2 * differenceStops))
    })
    if (columns.every((column) => norm(column) < unmoved)) break
    const dot = (a: readonly number[], b: readonly number[]) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
    const squares = columns.flatMap((row, i) => columns.map((column, j) => dot(row, column) + (i === j ? damping : 0)))
    if (!squares.every(Number.isFinite)) break
    const raw = transform(
      invert(squares),
      columns.map((column) => -dot(column, residual)),
    )
    const shorten = Math.min(1, longestStepStops / norm(raw))
    const next = gains.map((value, i) => value + raw[i] * shorten) as unknown as Gains
    const nextResidual = miss(next)
    if (norm(nextResidual) < norm(residual)) {
      gains = next
      residual = nextResidual
      damping = Math.max(damping / 10, 1e-12)
    } else {
      damping *= 10
      if (damping > 1e6) break
    }
  }
  return { gains, error: norm(residual) }
}

/** Chroma per lightness of a finished `workingRgb` along the axes warm and magenta, in thousandths. */
export function seenShift(rgb: readonly number[]): { warm: number; magenta: number } {
  const [lightness, a, b] = workingToOklab(rgb)
  const scale = 1 / (unit * lightness)
  return { warm: (a * warmA + b * warmB) * scale, magenta: (a * warmB - b * warmA) * scale }
}

/**
 * Gains that shift a finished grey by `warm` and `magenta` from where the chain takes it now, at unchanged lightness. Where
 * the chain cannot show such a colour (black and white, a mix that loses a channel) they stop at the last value that it can.
 */
export function solveAsSeen({ finish, level, warm, magenta, lightness: kept = 'kept' }: AsSeenRequest): AsSeen {
  const seen = ([red, blue, common]: Gains) => {
    const all = level * 2 ** common
    return workingToOklab(finish([all * 2 ** red, all, all * 2 ** blue]))
  }
  const [lightness, a, b] = seen([0, 0, 0])
  const look: Look = (gains) => {
    const lab = seen(gains)
    const scale = kept === 'kept' ? 1 : lightness / lab[0]
    return [lab[1] * scale, lab[2] * scale, lab[0] * scale]
  }
  const wayA = (warm * warmA + magenta * warmB) * unit * lightness
  const wayB = (warm * warmB - magenta * warmA) * unit * lightness
  const solve = (share: number, start: Gains) => approach(look, [a + share * wayA, b + share * wayB, lightness], start)
  const answer = ([redStops, blueStops, commonStops]: Gains, reached: boolean): AsSeen => {
    return { redStops, blueStops, commonStops, reached }
  }

  const shows = ({ gains, error }: ReturnType<typeof approach>) =>
    error < reachedBelow && gains.every((stops) => Math.abs(stops) < largestStops)

  const direct = solve(1, [0, 0, 0])
  if (shows(direct)) return answer(direct.gains, true)
  let gains: Gains = [0, 0, 0]
  let can = 0
  for (let round = 0; round < rounds; round++) {
    let cannot = 1
    for (let i = 0; i < halvings; i++) {
      const share = (can + cannot) / 2
      const part = solve(share, gains)
      if (!shows(part)) {
        cannot = share
        continue
      }
      can = share
      gains = part.gains
      const whole = solve(1, gains)
      if (shows(whole)) return answer(whole.gains, true)
    }
    // A share that was out of reach from afar may not be so from here.
    const again = solve(cannot, gains)
    if (!shows(again)) break
    can = cannot
    gains = again.gains
  }
  return answer(gains, false)
}
