import type { CivilDate } from '../calendar/civil.ts'
import type { Instant } from '../calendar/zone.ts'

/** What a repair's place in the bench queue depends on. */
export interface QueueFacts {
  readonly number: number
  readonly comeback: boolean
  /** The place a person gave it; null where none did. */
  readonly benchOrder: number | null
  readonly estimatedOn: CivilDate | null
  readonly goAheadAt: Instant | null
}

const nothing = '9999'

/** The keys the queue is sorted by, the first that differs deciding: comebacks, the order given, the estimated date, the go-ahead, the number. */
const keysOf = (facts: QueueFacts): readonly (number | string)[] => [
  facts.comeback ? 0 : 1,
  facts.benchOrder ?? Number.MAX_SAFE_INTEGER,
  facts.estimatedOn ?? nothing,
  facts.goAheadAt ?? nothing,
  facts.number,
]

/** Negative when `a` is to be worked on before `b`. */
export function beforeInQueue(a: QueueFacts, b: QueueFacts): number {
  const other = keysOf(b)
  for (const [index, key] of keysOf(a).entries()) {
    const against = other[index] ?? key
    if (key !== against) return key < against ? -1 : 1
  }
  return 0
}

/** The ids with the one given moved so many places up (negative) or down; it stops at the ends. */
export function moved(ids: readonly number[], id: number, places: number): number[] {
  const from = ids.indexOf(id)
  const rest = ids.filter(other => other !== id)
  if (from < 0) return rest
  const to = Math.min(Math.max(from + places, 0), rest.length)
  return [...rest.slice(0, to), id, ...rest.slice(to)]
}
