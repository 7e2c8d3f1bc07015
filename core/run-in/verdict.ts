import type { Instant } from '../calendar/zone.ts'
import { nutResponse, turnsToZero } from '../rate/nut.ts'
import { type Fault, type Trial, trialOf } from './faults.ts'
import type { RateLimits } from './limits.ts'
import { stageDays, windEveryDays } from './movement.ts'
import { observed } from './observed.ts'
import type { RunInPolicy } from './policy.ts'
import type { ShelfClock } from './shelf-clock.ts'
import type { ShelfReading } from './shelf-reading.ts'
import { type SoundSheet, soundSheet } from './sound-sheet.ts'
import { type Stretch, scatterOf, stretchDays, stretchesOf } from './stretches.ts'
import { type Evidence, isSteady, type ToShow, telling, toBeShown, type VerdictInput } from './to-show.ts'
import { walkOver } from './walk.ts'
import { windCurve } from './wind-curve.ts'

/**
 * `may-pass`: everything has been shown; `regulate`: it goes steadily, but further off than its limit; `begin-again`: a fault started the test again and
 * it is not through yet; `not-yet`: well so far.
 */
export type VerdictCode = 'may-pass' | 'not-yet' | 'regulate' | 'begin-again'

/** Which way the bob goes, and how many turns of the nut, told in the same sense as those already given. */
export interface Suggestion {
  readonly turns: number
  /** A clock that gains is made slower by lowering the bob. */
  readonly bob: 'raise' | 'lower'
}

/** All a log proves. It advises; a pass is a person's recorded decision. */
export interface Verdict {
  readonly verdict: VerdictCode
  readonly toShow: readonly ToShow[]
  /** Days under observation since the test began, or began again. */
  readonly observedDays: number
  readonly neededDays: number
  readonly since: Instant | null
  /** Of the last stretch of free running, + gaining; null while too short to tell. */
  readonly ratePerDay: number | null
  readonly plusMinus: number | null
  /** About the lines of all stretches of the test. */
  readonly scatterSeconds: number | null
  readonly secondsPerDayPerTurn: number | null
  readonly suggest: Suggestion | null
  /** Each started the test again. */
  readonly faults: readonly Fault[]
  /** Heard wrong once or twice: set right, and heard again. */
  readonly wrongs: readonly Fault[]
  /** Readings that look like slips of the pen. */
  readonly slips: readonly Instant[]
  readonly sheet: SoundSheet
}

/** Everything the shelf's log of a clock proves at `now`. The one place where it is judged: page, certificate and calculation all ask here. */
export function shelfVerdict(input: VerdictInput): Verdict {
  const trial = trialOf(input.readings, input.clock)
  const readings = input.readings.slice(trial.begins)
  const evidence = evidenceOf(input, readings)
  const toShow = toBeShown(input, evidence)
  return {
    verdict: codeOf(input, trial, evidence, toShow),
    toShow,
    observedDays: evidence.observed.days,
    neededDays: evidence.neededDays,
    since: readings[0]?.at ?? null,
    ...rateFigures(input, evidence),
    faults: trial.faults,
    wrongs: trial.wrongs,
    slips: slipsOf(evidence.stretches),
    sheet: evidence.sheet,
  }
}

/** A second misheard is four a day where a rate is told from a quarter of a day; from less it says nothing (our own choice). */
const leastDaysOfRate = 0.25

function evidenceOf(input: VerdictInput, readings: readonly ShelfReading[]): Evidence {
  const { clock, policy, limits, closedDays } = input
  const read = stretchesOf(readings)
  const curve = windCurve(readings, read, clock, limits.steady)
  const stretches = curve.bow === 0 ? read : stretchesOf(readings, curve.at)
  const neededDays = daysAsked(policy, clock)
  return {
    readings,
    observed: observed(readings, clock, { readingEveryDays: policy.readingEveryDays, closedDays }),
    neededDays,
    stretches,
    scatter: scatterOf(stretches),
    walk: walkOver(neededDays, readings, read, clock),
    sheet: soundSheet(readings, clock),
  }
}

/** Days of running the policy asks for. */
export const daysAsked = ({ stages }: RunInPolicy, { durationDays }: ShelfClock): number =>
  stages.reduce((sum, stage) => sum + stageDays(stage, windEveryDays(durationDays)), 0)

function rateFigures({ readings, limits }: VerdictInput, evidence: Evidence) {
  const last = evidence.stretches.at(-1)
  const line = last && stretchDays(last) >= leastDaysOfRate ? last.line : null
  const response = nutResponse(stretchesOf(readings))
  const turns = telling(evidence) ? turnsToZero(line, response) : null
  return {
    ratePerDay: line?.slope ?? null,
    plusMinus: line?.plusMinus ?? null,
    scatterSeconds: evidence.scatter,
    secondsPerDayPerTurn: response?.perTurn ?? null,
    suggest: turns === null || !line || isWell(line.slope, limits) ? null : suggestionOf(turns, line.slope),
  }
}

/** Within a tenth of its limit a rate is left alone: turning the nut would stir more than it mends (our own choice). */
const isWell = (ratePerDay: number, { perDay }: RateLimits): boolean => Math.abs(ratePerDay) <= perDay / 10

const suggestionOf = (turns: number, ratePerDay: number): Suggestion => ({
  turns,
  bob: ratePerDay > 0 ? 'lower' : 'raise',
})

function codeOf(
  input: VerdictInput,
  trial: Trial,
  evidence: Evidence,
  toShow: readonly ToShow[],
): VerdictCode {
  if (toShow.length === 0) return 'may-pass'
  const isOnlyRate = toShow.every(({ code }) => code === 'rate')
  if (trial.faults.length > 0 && !isOnlyRate) return 'begin-again'
  return isToBeRegulated(input, evidence) ? 'regulate' : 'not-yet'
}

/** A steady rate outside its limit, by more than its uncertainty until all the days have been observed. */
function isToBeRegulated({ limits }: VerdictInput, evidence: Evidence): boolean {
  const line = telling(evidence)
  if (!line || !isSteady(evidence, limits)) return false
  const doubt = evidence.observed.days >= evidence.neededDays ? 0 : line.plusMinus
  return Math.abs(line.slope) - doubt > limits.perDay
}

const slipsOf = (stretches: readonly Stretch[]): Instant[] =>
  stretches.flatMap(({ line, points }) =>
    (line?.slips ?? []).flatMap(i => {
      const point = points[i]
      return point ? [new Date(point.ms).toISOString()] : []
    }),
  )

/** The figures of a verdict's sentence: days and seconds a day; `fault` is the instant of the last fault. */
export const verdictValues = (
  { observedDays, neededDays, ratePerDay, faults }: Verdict,
  { perDay }: Pick<RateLimits, 'perDay'>,
) => ({
  observedDays,
  neededDays,
  ratePerDay,
  limitPerDay: perDay,
  faultAt: faults.at(-1)?.at ?? null,
})
