import type { Instant } from '../calendar/zone.ts'
import type { ShelfClock } from './shelf-clock.ts'
import type { ShelfReading } from './shelf-reading.ts'
import { halfIsRight, hourBlows, wrongCount } from './strike-heard.ts'

/** When something was last heard, and whether it was right. */
export interface Heard {
  readonly at: Instant
  readonly right: boolean
}

/** What was heard of a clock on any reading, the last hearing of each counting. Common practice. */
export interface SoundSheet {
  /** By the hour on the dial, 1 to 12. */
  readonly hours: Readonly<Record<number, Heard>>
  readonly half: Heard | null
  /** The strike and the chime as they were last heard, counted or not. */
  readonly strike: Heard | null
  readonly chime: Heard | null
  /** By the quarter, 1 to 4. */
  readonly quarters: Readonly<Record<number, Heard>>
  readonly selfCorrected: Heard | null
  readonly silent: Heard | null
  readonly repeats: Heard | null
}

const twelve = Array.from({ length: 12 }, (_, i) => i + 1)
const four = [1, 2, 3, 4]

/** The sheet of these readings, which are in order of time. */
export function soundSheet(readings: readonly ShelfReading[], clock: ShelfClock): SoundSheet {
  const hours: Record<number, Heard> = {}
  const quarters: Record<number, Heard> = {}
  for (const { at, hour, quarter, twelveRight, fourRight } of readings) {
    if (twelveRight) for (const shown of twelve) hours[shown] = { at, right: true }
    if (fourRight) for (const which of four) quarters[which] = { at, right: true }
    if (hour) hours[hour.shown] = { at, right: hour.counted === hourBlows(clock.strike, hour.shown) }
    if (quarter) quarters[quarter.which] = { at, right: quarter.right }
  }
  const last = (what: (reading: ShelfReading) => boolean | undefined): Heard | null => {
    const reading = readings.findLast(one => what(one) !== undefined)
    return reading ? { at: reading.at, right: what(reading) === true } : null
  }
  return {
    hours,
    quarters,
    half: last(({ half }) => (half === undefined ? undefined : halfIsRight(clock.strike, half))),
    strike: lastStrike(readings, clock),
    chime: lastChime(readings),
    selfCorrected: last(one => one.selfCorrected),
    silent: last(one => one.silent),
    repeats: last(one => one.repeats),
  }
}

function lastStrike(readings: readonly ShelfReading[], clock: ShelfClock): Heard | null {
  const heard = readings.flatMap(reading => {
    const { at, strikeRight, hour, twelveRight } = reading
    const right = twelveRight || strikeRight || (hour && wrongCount({ at, hour }, clock) === null)
    return hour || twelveRight || strikeRight !== undefined ? [{ at, right: Boolean(right) }] : []
  })
  return heard.at(-1) ?? null
}

function lastChime(readings: readonly ShelfReading[]): Heard | null {
  const heard = readings.flatMap(({ at, chimeRight, quarter, fourRight }) =>
    quarter || fourRight || chimeRight !== undefined
      ? [{ at, right: Boolean(fourRight || chimeRight || quarter?.right) }]
      : [],
  )
  return heard.at(-1) ?? null
}

/** The hours whose count was not yet heard right: twelve counts of a plain strike, four of ship's bells, one of a passing strike. */
export function hoursToHear({ hours }: SoundSheet, { strike }: ShelfClock): number[] {
  const heard = new Set(twelve.filter(hour => hours[hour]?.right).map(hour => hourBlows(strike, hour)))
  const missing = new Map<number, number>()
  for (const hour of twelve) {
    const blows = hourBlows(strike, hour)
    const wrong = hours[hour]?.right === false
    if (blows !== null && (wrong || !heard.has(blows)) && !missing.has(blows)) missing.set(blows, hour)
  }
  return [...missing.values()]
}

/** The quarters not yet heard right: four of a chime, three of a ting-tang strike, which sounds the hour instead of the fourth. */
export function quartersToHear({ quarters }: SoundSheet, { chime, strike }: ShelfClock): number[] {
  const asked = chime ? four : strike === 'ting-tang' ? [1, 2, 3] : []
  return asked.filter(which => !quarters[which]?.right)
}
