import { minuteOf } from '../calendar/local.ts'
import { dayMs } from '../calendar/units.ts'
import { gather, unless, whenGood } from '../checked.ts'
import { type Checked, good, type Problem, problem } from '../problems.ts'
import { type Rate, rateOf, segmentsOf } from '../rate/rate.ts'
import { mostBlows, strikePatterns } from '../strike/blows.ts'
import { isLimitPerDay } from './limits.ts'
import { movements } from './movement.ts'
import { policyProblems } from './plan-problems.ts'
import type { RunInPolicy } from './policy.ts'
import { type Movement, msOf, type ShelfReading, type Trouble } from './shelf-reading.ts'
import { canBeJudged, neededDays, type StillToShow, stillToShow } from './still-to-show.ts'
import { trendOverWind } from './trend.ts'
import { type Trial, trialOf } from './trial.ts'

export type { Movement, ShelfReading, Trouble } from './shelf-reading.ts'
export type { StillToShow } from './still-to-show.ts'

/** A clock's log on the shelf and what is asked of it. */
export interface AssessmentInput extends Movement {
  readonly policy: RunInPolicy
  /** The greatest rate, either way, the shop hands this clock over with, in seconds a day. */
  readonly limitSecondsPerDay: number
  /** In order of time. */
  readonly readings: readonly ShelfReading[]
}

/**
 * `nothingRead`; `startAgain`: the last reading showed a trouble; `tooSoon`: fewer than three readings or two days
 * since the clock was last touched; `regulate`: its rate is beyond the limit; `goOn`: well so far; `mayPass`:
 * everything has been shown.
 */
export type VerdictCode = 'nothingRead' | 'startAgain' | 'tooSoon' | 'regulate' | 'goOn' | 'mayPass'

/** The verdict with the figures behind it; rates in seconds a day, null where not known. */
export interface Verdict {
  readonly code: VerdictCode
  readonly values: {
    readonly ratePerDay: number | null
    readonly limitPerDay: number
    readonly suggestedTurns: number | null
    readonly ranDays: number
    readonly neededDays: number
    readonly since: string | null
  }
}

/** All a log says of a clock on the shelf. The verdict advises; a pass is a person's recorded decision. */
export interface Assessment {
  readonly rate: Rate
  /** Seconds a day per day since the wind; negative where the clock gains early and loses late. */
  readonly trendOverWind: number | null
  /** Stops and strike faults of the whole log; each started the test again. */
  readonly troubles: readonly Trouble[]
  readonly stillToShow: readonly StillToShow[]
  readonly verdict: Verdict
}

/**
 * The assessment of a log. Problems: those of `rateOf` and of the policy, `runIn.limitPerDay`, `runIn.pattern`,
 * `date.notATime`, `strike.blows`.
 */
export function runInAssessment(input: AssessmentInput): Checked<Assessment> {
  const checked = gather({
    rate: rateOf(input.readings),
    input: unless(assessmentProblems(input), () => input),
  })
  return whenGood(checked, ({ rate }) => good(assessed(input, rate)))
}

function assessed(input: AssessmentInput, rate: Rate): Assessment {
  const trial = trialOf(input.readings, input)
  const readings = input.readings.slice(trial.begins)
  const missing = stillToShow({
    movement: input,
    policy: input.policy,
    limitPerDay: input.limitSecondsPerDay,
    readings,
    rate,
    winds: wholeWinds(readings, input),
    ranDays: trial.ranDays,
  })
  return {
    rate,
    trendOverWind: trendOverWind(input.readings),
    troubles: trial.troubles,
    stillToShow: missing,
    verdict: { code: verdictCode(input, rate, trial, missing), values: figures(input, rate, trial) },
  }
}

/** A wind brought forward to an open day still counts as whole from two thirds of its interval on (our own rule). */
function wholeWinds(readings: readonly ShelfReading[], { duration }: Movement): number {
  const leastMs = (movements[duration].windEveryDays * dayMs * 2) / 3
  return segmentsOf(readings).reduce((sum, segment) => {
    const wound = segment.filter(reading => reading.wound).map(msOf)
    return sum + wound.filter((at, i) => at - (wound[i - 1] ?? at) >= leastMs).length
  }, 0)
}

function verdictCode(
  { readings }: AssessmentInput,
  { segments }: Rate,
  { troubles }: Trial,
  missing: readonly StillToShow[],
): VerdictCode {
  const last = segments.at(-1)
  if (!last) return 'nothingRead'
  if (troubles.at(-1)?.at === readings.at(-1)?.at) return 'startAgain'
  if (!canBeJudged(last)) return 'tooSoon'
  if (missing.some(({ code }) => code === 'rate')) return 'regulate'
  return missing.length > 0 ? 'goOn' : 'mayPass'
}

const figures = (input: AssessmentInput, rate: Rate, trial: Trial): Verdict['values'] => ({
  ratePerDay: rate.segments.at(-1)?.robustRatePerDay ?? null,
  limitPerDay: input.limitSecondsPerDay,
  suggestedTurns: rate.suggestedTurns,
  ranDays: trial.ranDays,
  neededDays: neededDays(input.policy, input),
  since: input.readings[trial.begins]?.at ?? null,
})

function assessmentProblems(input: AssessmentInput): Problem[] {
  const problems = policyProblems(input.policy, input.duration)
  if (!isLimitPerDay(input.limitSecondsPerDay))
    problems.push(problem('runIn.limitPerDay', 'limitSecondsPerDay'))
  if (input.pattern !== null && !strikePatterns.includes(input.pattern))
    problems.push(problem('strike.pattern', 'pattern'))
  input.readings.forEach(({ heard }, i) => {
    if (heard) problems.push(...heardProblems(heard, `readings[${i}].heard`))
  })
  return problems
}

function heardProblems({ at, blows }: NonNullable<ShelfReading['heard']>, field: string): Problem[] {
  const problems: Problem[] = []
  if (minuteOf(at) === undefined) problems.push(problem('date.notATime', `${field}.at`, { text: at }))
  if (!Number.isInteger(blows) || blows < 0 || blows > mostBlows)
    problems.push(problem('strike.blows', `${field}.blows`))
  return problems
}
