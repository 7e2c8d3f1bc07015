import { movements } from './movement.ts'
import { type Movement, msOf, ranDown, type ShelfReading, type Trouble, troublesOf } from './shelf-reading.ts'

const dayMs = 86_400_000
const hourMs = 3_600_000

/**
 * The test as it stands: since when it counts, how long the clock has run in it, and every trouble of the whole
 * log.
 */
export interface Trial {
  /** Index of the reading the running test began with: the first, or the last that showed a trouble. */
  readonly begins: number
  /** Days run since then; time a clock stood run down does not count. */
  readonly ranDays: number
  readonly troubles: readonly Trouble[]
}

/** Reads the log through. Every trouble starts the test again. */
export function trialOf(readings: readonly ShelfReading[], movement: Movement): Trial {
  let trial = { begins: 0, ranMs: 0 }
  const troubles: Trouble[] = []
  let woundMs = readings[0] ? msOf(readings[0]) : 0
  readings.forEach((reading, i) => {
    const found = troublesOf(reading, woundMs, movement)
    troubles.push(...found)
    const ranMs = trial.ranMs + ranBetween(readings[i - 1], reading, woundMs, movement)
    trial = found.length > 0 ? { begins: i, ranMs: 0 } : { ...trial, ranMs }
    if (reading.wound) woundMs = msOf(reading)
  })
  return { begins: trial.begins, ranDays: trial.ranMs / dayMs, troubles }
}

function ranBetween(
  before: ShelfReading | undefined,
  now: ShelfReading,
  woundMs: number,
  movement: Movement,
): number {
  if (!before) return 0
  const until = ranDown(now, woundMs, movement)
    ? woundMs + movements[movement.duration].runningHours * hourMs
    : msOf(now)
  return Math.max(0, until - msOf(before))
}
