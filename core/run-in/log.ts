import type { Instant } from '../calendar/zone.ts'
import type { ShelfEvent, ShelfReading } from './shelf-reading.ts'

/** A reading as it stands in the ledger. */
export interface LogEntry {
  readonly at: Instant
  /** Milliseconds fast (+) or slow (−) as found; null where it was not read. */
  readonly errorMs: number | null
  /** The same as left, where the hands were set. */
  readonly leftMs: number | null
  readonly wound: boolean
  readonly stopped: boolean
  /** Decimal text, '' for none. */
  readonly nutTurns: string
  readonly event: ShelfEvent | null
  readonly hourShown: number | null
  readonly hourCounted: number | null
  readonly halfCounted: number | null
  readonly quarter: 1 | 2 | 3 | 4 | null
  readonly quarterRight: boolean | null
  readonly twelveRight: boolean
  readonly fourRight: boolean
  readonly selfCorrected: boolean | null
  readonly silent: boolean | null
  readonly repeats: boolean | null
  readonly inBeat: boolean | null
  readonly strikeRight: boolean | null
  readonly chimeRight: boolean | null
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

/** What of a plan an entry can fulfil. */
export const doneBy = ({
  at,
  wound,
  stopped,
  errorMs,
  leftMs,
}: Pick<LogEntry, 'at' | 'wound' | 'stopped' | 'errorMs' | 'leftMs'>) => ({
  at,
  wound,
  read: stopped || errorMs !== null || leftMs !== null,
})

/** The log as it is judged: the entries that count, in order of time. */
export const shelfLog = (entries: readonly (LogEntry & Correctable)[]): ShelfReading[] =>
  standingEntries(entries).map(readingOf)

/** The entry as it is judged, without what was not said. */
export function readingOf(entry: LogEntry): ShelfReading {
  const { at, errorMs, leftMs, nutTurns, hourShown, hourCounted, halfCounted, quarter, quarterRight } = entry
  const said = {
    errorSeconds: errorMs === null ? null : errorMs / 1000,
    leftSeconds: leftMs === null ? null : leftMs / 1000,
    wound: entry.wound || null,
    stopped: entry.stopped || null,
    nutTurns: nutTurns === '' ? null : Number(nutTurns),
    event: entry.event,
    hour: hourShown === null || hourCounted === null ? null : { shown: hourShown, counted: hourCounted },
    half: halfCounted,
    quarter: quarter === null || quarterRight === null ? null : { which: quarter, right: quarterRight },
    twelveRight: entry.twelveRight || null,
    fourRight: entry.fourRight || null,
    selfCorrected: entry.selfCorrected,
    silent: entry.silent,
    repeats: entry.repeats,
    inBeat: entry.inBeat,
    strikeRight: entry.strikeRight,
    chimeRight: entry.chimeRight,
  }
  return { at, ...Object.fromEntries(Object.entries(said).filter(([, value]) => value !== null)) }
}
