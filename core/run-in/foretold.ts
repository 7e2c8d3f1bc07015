import { dayMs } from '../calendar/units.ts'
import type { RateLimits } from './limits.ts'
import type { ShelfReading } from './shelf-reading.ts'
import { stretchDays, stretchesOf } from './stretches.ts'

/** Nobody is asked about less than a minute: a dial may be misread by that much (our own choice). */
const leastSeconds = 60
/** A figure is far off beyond so many times what the limits of rate and steadiness allow (our own choice). */
const timesTheLimits = 3

/**
 * What the hands were expected to show, in seconds fast (+) or slow (−), where a figure lies so far from it that it may be a slip of the pen; null where
 * it does not, or where nothing can be expected yet.
 */
export function foretoldOtherwise(
  before: readonly ShelfReading[],
  atMs: number,
  seconds: number,
  limits: RateLimits,
): number | null {
  const last = stretchesOf(before).at(-1)
  const from = last?.points.at(-1)
  if (!last || !from) return null
  const days = (atMs - from.ms) / dayMs
  const knowsRate = last.points.length >= 3 && stretchDays(last) >= 1
  const expected = from.seconds + (knowsRate ? (last.line?.slope ?? 0) * days : 0)
  const room = leastSeconds + timesTheLimits * (limits.steady + limits.perDay * days)
  return Math.abs(seconds - expected) > room ? expected : null
}
