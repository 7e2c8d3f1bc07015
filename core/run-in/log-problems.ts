import { instantMs } from '../calendar/zone.ts'
import { type Problem, problem } from '../problems.ts'
import { errorProblems, nutTurnsProblems } from '../rate/reading.ts'
import { mostBlows } from '../strike/blows.ts'
import type { ShelfReading } from './shelf-reading.ts'

const mostReadings = 20_000

/**
 * What is wrong with a log told from outside: `rate.tooMany`, `date.notAnInstant`, `rate.outOfOrder`, `rate.error`, `reading.nutTurns`, `strike.blows`,
 * `strike.hourShown`, `strike.quarter`, and `reading.inFuture` for one after `now`.
 */
export function logProblems(log: readonly ShelfReading[], now: string): Problem[] {
  if (log.length > mostReadings) return [problem('rate.tooMany', 'log', { most: mostReadings })]
  const nowMs = instantMs(now)
  const problems = nowMs === undefined ? [problem('date.notAnInstant', 'now', { text: now })] : []
  let before = Number.NEGATIVE_INFINITY
  log.forEach((reading, i) => {
    const ms = instantMs(reading.at)
    if (ms === undefined) problems.push(problem('date.notAnInstant', `log[${i}].at`, { text: reading.at }))
    else if (ms < before) problems.push(problem('rate.outOfOrder', `log[${i}].at`))
    if (ms !== undefined && nowMs !== undefined && ms > nowMs)
      problems.push(problem('reading.inFuture', `log[${i}].at`))
    problems.push(...entryProblems(reading, `log[${i}]`))
    before = Math.max(before, ms ?? before)
  })
  return problems
}

function entryProblems(reading: ShelfReading, field: string): Problem[] {
  const { errorSeconds = 0, leftSeconds = 0, nutTurns = 0, hour, half, quarter } = reading
  const problems = [
    ...errorProblems(errorSeconds, `${field}.errorSeconds`),
    ...errorProblems(leftSeconds, `${field}.leftSeconds`),
    ...nutTurnsProblems(nutTurns, `${field}.nutTurns`),
    ...blowsProblems(hour?.counted, `${field}.hour.counted`),
    ...blowsProblems(half, `${field}.half`),
  ]
  if (hour && !isWithin(hour.shown, 1, 12)) problems.push(problem('strike.hourShown', `${field}.hour.shown`))
  if (quarter && !isWithin(quarter.which, 1, 4))
    problems.push(problem('strike.quarter', `${field}.quarter.which`))
  return problems
}

const blowsProblems = (blows: number | undefined, field: string): Problem[] =>
  blows === undefined || isWithin(blows, 0, mostBlows) ? [] : [problem('strike.blows', field)]

const isWithin = (n: number, least: number, most: number): boolean =>
  Number.isInteger(n) && n >= least && n <= most
