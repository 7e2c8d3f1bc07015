import { dayMs, hourMs } from '../calendar/units.ts'
import { movements } from './movement.ts'
import { type Movement, msOf, ranDown, type ShelfReading, type Trouble, troublesOf } from './shelf-reading.ts'

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
  const times = readings.map(msOf)
  let woundMs = times[0] ?? 0
  readings.forEach((reading, i) => {
    const nowMs = times[i] ?? 0
    const found = troublesOf(reading, woundMs, movement)
    troubles.push(...found)
    const wentUntilMs = ranDown(reading, woundMs, movement) ? ranOutMs(woundMs, movement) : nowMs
    const ranMs = trial.ranMs + Math.max(0, wentUntilMs - (times[i - 1] ?? nowMs))
    trial = found.length > 0 ? { begins: i, ranMs: 0 } : { ...trial, ranMs }
    if (reading.wound) woundMs = nowMs
  })
  return { begins: trial.begins, ranDays: trial.ranMs / dayMs, troubles }
}

/** When a clock left alone since its last wind runs out. */
const ranOutMs = (woundMs: number, { duration }: Movement): number =>
  woundMs + movements[duration].runningHours * hourMs
