import { median } from '../statistics/median.ts'
import { studentT } from '../statistics/student-t.ts'
import { theilSen } from '../statistics/theil-sen.ts'

/** The line a stretch of readings lies about, and how well it is known. */
export interface RobustLine {
  /** Theil–Sen slope, seconds a day. */
  readonly slope: number
  /** The median of what is left when the slope is taken off. */
  readonly intercept: number
  /** Half the width of the 95 % interval of the slope, seconds a day. */
  readonly plusMinus: number
  /** Standard deviation about the line in seconds, slips left out; null with fewer than three readings. */
  readonly scatter: number | null
  /** Sum of squares about the line and its degrees of freedom, slips left out; for a scatter over several stretches. */
  readonly squares: number
  readonly freedom: number
  /** Indices of single readings that lie far off while those beside them do not: slips of a digit, not the clock. */
  readonly slips: readonly number[]
}

/**
 * A dial is read by eye to about a second (common practice). Of a few readings the scatter is hardly known, so this is joined with
 * it, with the weight of three readings (our own choice): two or three readings that happen to lie on a line prove little.
 */
const eye = { seconds: 1, freedom: 3 } as const
/** A reading is a slip where it lies so many times further off than the others scatter about their own line (our own choice). */
const slipAt = 6
/** With fewer readings nobody can tell a slip from a clock that goes unsteadily. */
const fewestForSlips = 4
/** In so short a stretch one wild reading sways the line: every reading is tried as the slip; in longer ones the one furthest off. */
const fewEnoughToTryAll = 12
/** Nobody makes more slips than this in one stretch; of more readings than `mostForSlips` none are looked for. */
const mostSlips = 5
const mostForSlips = 1000
/** Errors that hang together are told from so many readings on. */
const fewestForCorrelation = 5

/** The line through at least two readings at different times; times in days, errors in seconds, both in order. */
export function robustLine(days: readonly number[], seconds: readonly number[]): RobustLine {
  const slips = slipsAmong(days, seconds)
  const kept = days.map((_, i) => i).filter(i => !slips.includes(i))
  const at = kept.map(i => days[i] as number)
  const { slope, intercept, off } = fitted(
    at,
    kept.map(i => seconds[i] as number),
  )
  const squares = off.reduce((sum, value) => sum + value ** 2, 0)
  const freedom = Math.max(0, kept.length - 2)
  return {
    slope,
    intercept,
    plusMinus: uncertainty(at, off),
    scatter: freedom > 0 ? Math.sqrt(squares / freedom) : null,
    squares,
    freedom,
    slips,
  }
}

/** The robust line and how far each reading lies off it. */
function fitted(days: readonly number[], seconds: readonly number[]) {
  const slope = theilSen(days, seconds)
  const leaning = seconds.map((second, i) => second - slope * (days[i] as number))
  const intercept = median(Float64Array.from(leaning))
  return { slope, intercept, off: leaning.map(value => value - intercept) }
}

/**
 * Single readings far off the line of the others. The first and the last are none: the clock may have done it, as it may a step that stays. At most one in
 * ten, and five, are taken for slips.
 */
function slipsAmong(days: readonly number[], seconds: readonly number[]): number[] {
  const slips: number[] = []
  if (days.length > mostForSlips) return slips
  for (let most = Math.min(mostSlips, Math.ceil(days.length / 10)); most > 0; most--) {
    const slip = slipAmong(days, seconds, slips)
    if (slip === undefined) break
    slips.push(slip)
  }
  return slips.sort((a, b) => a - b)
}

function slipAmong(
  days: readonly number[],
  seconds: readonly number[],
  found: readonly number[],
): number | undefined {
  const kept = days.map((_, i) => i).filter(i => !found.includes(i))
  if (kept.length < fewestForSlips) return undefined
  const candidates =
    kept.length <= fewEnoughToTryAll ? kept.slice(1, -1) : [furthestWithin(days, seconds, kept)]
  const [best] = candidates
    .map(i => triedAsSlip(days, seconds, kept, i))
    .sort((a, b) => a.othersScatter - b.othersScatter)
  return best && isFarOff(best) ? best.i : undefined
}

const isFarOff = ({ off, othersScatter }: { off: number; othersScatter: number }): boolean =>
  Math.abs(off) > slipAt * Math.max(eye.seconds, othersScatter)

/** How far the first or last reading lies off the line of the others, where it would be a slip within it; null where it would not. */
export function farOffAtEnd(
  days: readonly number[],
  seconds: readonly number[],
  end: 'first' | 'last',
): number | null {
  if (days.length < fewestForSlips) return null
  const all = days.map((_, i) => i)
  const tried = triedAsSlip(days, seconds, all, end === 'first' ? 0 : days.length - 1)
  return isFarOff(tried) ? tried.off : null
}

/** How far a reading lies off the line of the others, and how those scatter about it. */
function triedAsSlip(
  days: readonly number[],
  seconds: readonly number[],
  kept: readonly number[],
  i: number,
) {
  const others = kept.filter(one => one !== i)
  const { slope, intercept, off } = fitted(
    others.map(one => days[one] as number),
    others.map(one => seconds[one] as number),
  )
  const squares = off.reduce((sum, value) => sum + value ** 2, 0)
  return {
    i,
    off: (seconds[i] as number) - intercept - slope * (days[i] as number),
    othersScatter: Math.sqrt(squares / (others.length - 2)),
  }
}

/** The reading furthest off the line of all, the first and the last left out. */
function furthestWithin(
  days: readonly number[],
  seconds: readonly number[],
  kept: readonly number[],
): number {
  const { off } = fitted(
    kept.map(i => days[i] as number),
    kept.map(i => seconds[i] as number),
  )
  const sizes = off.slice(1, -1).map(Math.abs)
  return kept[1 + sizes.indexOf(Math.max(...sizes))] as number
}

/**
 * 95 % of a slope: t · s ÷ √Sxx, widened for errors that hang together from one reading to the next by √((1 + r) ÷ (1 − r)), r their lag-one
 * correlation (Bartlett 1935: fewer readings' worth of knowledge).
 */
function uncertainty(days: readonly number[], off: readonly number[]): number {
  const mean = days.reduce((sum, day) => sum + day, 0) / days.length
  const spread = days.reduce((sum, day) => sum + (day - mean) ** 2, 0)
  const squares = off.reduce((sum, value) => sum + value ** 2, 0)
  const freedom = eye.freedom + Math.max(0, days.length - 2)
  const deviation = Math.sqrt((eye.freedom * eye.seconds ** 2 + squares) / freedom)
  return (studentT(freedom) * deviation * widening(off)) / Math.sqrt(spread)
}

function widening(off: readonly number[]): number {
  const squares = off.reduce((sum, value) => sum + value ** 2, 0)
  if (off.length < fewestForCorrelation || squares === 0) return 1
  const products = off.slice(1).reduce((sum, value, i) => sum + value * (off[i] as number), 0)
  const r = Math.min(0.9, Math.max(0, products / squares))
  return Math.sqrt((1 + r) / (1 - r))
}
