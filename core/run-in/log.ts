import type { Instant } from '../calendar/zone.ts'
import type { StrikePattern } from '../strike/blows.ts'
import { isKnownAt } from './limits.ts'
import type { ShelfReading } from './shelf-reading.ts'

/** A reading as it stands in the ledger. */
export interface LogEntry {
  readonly at: Instant
  /** Milliseconds fast (+) or slow (−); null where the clock was found stopped and its error was not told. */
  readonly errorMs: number | null
  readonly wound: boolean
  readonly strikeRight: boolean | null
  readonly chimeRight: boolean | null
  readonly heardAt: string
  readonly blows: number | null
  readonly inBeat: boolean | null
  readonly stopped: boolean
  readonly handsSet: boolean
  /** Decimal text, '' for none. */
  readonly nutTurns: string
}

/** What an entry tells of itself and of what replaced it. */
export interface Correctable {
  readonly id: number
  readonly correctsId: number | null
  readonly withdrawn: boolean
}

/** The entries that count: those that neither were corrected nor strike another out, in order of time. */
export function standingEntries<E extends Correctable & { readonly at: Instant }>(
  entries: readonly E[],
): E[] {
  const corrected = new Set(entries.map(entry => entry.correctsId))
  return entries
    .filter(entry => !corrected.has(entry.id) && !entry.withdrawn)
    .sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : a.id - b.id))
}

/**
 * The log as the sums take it: the entries that count, in order of time. A stop whose error was not told joins the next reading, where the clock's going is known again; at the
 * end of the log it stands with the error before it, so that the stop itself is not lost.
 */
export function shelfLog(
  entries: readonly (LogEntry & Correctable)[],
  pattern: StrikePattern | null,
): ShelfReading[] {
  const log: ShelfReading[] = []
  let held: LogEntry | undefined
  let errorMs = 0
  for (const entry of standingEntries(entries)) {
    if (entry.errorMs === null) {
      held = held ? { ...entry, wound: held.wound || entry.wound } : entry
      continue
    }
    errorMs = entry.errorMs
    log.push(joined(reading(entry, errorMs, pattern), held))
    held = undefined
  }
  if (held) log.push(reading(held, errorMs, pattern))
  return log
}

const joined = (now: ShelfReading, held: LogEntry | undefined): ShelfReading =>
  held ? { ...now, stopped: true, wound: Boolean(now.wound) || held.wound } : now

function reading(entry: LogEntry, errorMs: number, pattern: StrikePattern | null): ShelfReading {
  const { at, wound, stopped, handsSet, nutTurns, strikeRight, chimeRight, inBeat, heardAt, blows } = entry
  return {
    at,
    errorSeconds: errorMs / 1000,
    wound,
    stopped,
    handsSet,
    ...(nutTurns === '' ? {} : { nutTurns: Number(nutTurns) }),
    ...(strikeRight === null ? {} : { strikeRight }),
    ...(chimeRight === null ? {} : { chimeRight }),
    ...(inBeat === null ? {} : { inBeat }),
    ...(blows !== null && isKnownAt(pattern, heardAt) ? { heard: { at: heardAt, blows } } : {}),
  }
}
