import { dayMs } from '../calendar/units.ts'
import { segmentsOf } from './rate.ts'
import type { Reading } from './reading.ts'

/** Seconds a day gained (+) or lost (−) from each reading to the next; null for the first of each stretch of free running. */
export const ratesBetween = (readings: readonly Reading[]): (number | null)[] =>
  segmentsOf(readings).flatMap(segment =>
    segment.map(({ at, errorSeconds }, i) => {
      const before = segment[i - 1]
      if (!before) return null
      return ((errorSeconds - before.errorSeconds) * dayMs) / (Date.parse(at) - Date.parse(before.at))
    }),
  )
