import { dayMs } from '../calendar/units.ts'
import { leftOn, msOf, type ShelfReading } from './shelf-reading.ts'

/** Seconds a day gained (+) or lost (−) at each reading since the hands were last read or set; null where it was not read, was stopped, or nothing came before. */
export function ratesBetween(readings: readonly ShelfReading[]): (number | null)[] {
  let from: { ms: number; seconds: number } | undefined
  return readings.map(reading => {
    const ms = msOf(reading)
    const { errorSeconds, stopped } = reading
    const known = from && from.ms < ms && !stopped && errorSeconds !== undefined
    const rate = known && from ? ((errorSeconds - from.seconds) * dayMs) / (ms - from.ms) : null
    const left = leftOn(reading)
    if (left !== undefined) from = { ms, seconds: left }
    else if (stopped) from = undefined
    return rate
  })
}
