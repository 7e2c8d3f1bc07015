import type { ShelfClock, Sounds } from './shelf-clock.ts'
import type { ShelfReading } from './shelf-reading.ts'

/** The blows due at an hour on the dial, 1 to 12; null where none follow from what is on record. */
export function hourBlows(strike: Sounds, shown: number): number | null {
  if (strike === 'none' || strike === 'unknown') return null
  if (strike === 'passing') return 1
  return strike === 'ship' ? (shown * 2) % 8 || 8 : shown
}

/** Whether so many blows at a half hour are right: one; of a plain strike also none; of ship's bells any odd number of bells. */
export function halfIsRight(strike: Sounds, counted: number): boolean {
  if (strike === 'ship') return counted % 2 === 1 && counted < 8
  if (strike === 'hours-half' || strike === 'passing') return counted === 1
  return strike === 'hours' ? counted <= 1 : true
}

/** A count that was not what was due. */
export interface WrongCount {
  readonly expected: number
  readonly heard: number
}

/** What was struck wrong at a reading; null where nothing was, or where it is not known what was due. */
export function wrongCount(
  { hour, half }: Pick<ShelfReading, 'at' | 'hour' | 'half'>,
  { strike }: ShelfClock,
): WrongCount | null {
  const due = hour && hourBlows(strike, hour.shown)
  if (hour && due !== null && due !== undefined && due !== hour.counted)
    return { expected: due, heard: hour.counted }
  return half === undefined || halfIsRight(strike, half) ? null : { expected: 1, heard: half }
}

/** Whether a count stands on the wheel at all: a count wheel that is out of step strikes another hour's count. */
export const isOnTheWheel = (heard: number): boolean => heard >= 1 && heard <= 12

/** The hour struck last, 1 to 12, and the quarter heard last, the fourth on the hour. */
export interface HeardNow {
  readonly hour: number
  readonly quarter: number
}

/** What strike and chime were last due at a time of day, `HH:MM`. */
export function heardNow(time: string): HeardNow {
  const [hours = 0, minutes = 0] = time.split(':').map(Number)
  return { hour: ((hours + 11) % 12) + 1, quarter: minutes < 15 ? 4 : Math.floor(minutes / 15) }
}
