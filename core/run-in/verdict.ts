import type { Instant } from '../calendar/zone.ts'
import { nutResponse, turnsToZero } from '../rate/nut.ts'
import { type Fault, type Trial, trialOf } from './faults.ts'
import type { RateLimits } from './limits.ts'
import { stageDays, windEveryDays } from './movement.ts'
import { isWatched, type Observed, observed, type Watch } from './observed.ts'
import type { RunInPolicy } from './policy.ts'
import type { ShelfClock } from './shelf-clock.ts'
import { msOf, type ShelfReading } from './shelf-reading.ts'
import { hoursToHear, quartersToHear, type SoundSheet, soundSheet } from './sound-sheet.ts'
import { type Stretch, scatterOf, stretchDays, stretchesOf } from './stretches.ts'
import { walkOver } from './walk.ts'
import { windCurve } from './wind-curve.ts'

/** What a log is judged by. */
export interface VerdictInput {
  readonly clock: ShelfClock
  readonly policy: RunInPolicy
  readonly limits: RateLimits
  /** In order of time. */
  readonly readings: readonly ShelfReading[]
  readonly now: Instant
  readonly closedDays?: Watch['closedDays']
}

/**
 * `may-pass`: everything has been shown; `regulate`: it goes steadily, but further off than its limit; `begin-again`: a fault started the test again and
 * it is not through yet; `not-yet`: well so far.
 */
export type VerdictCode = 'may-pass' | 'not-yet' | 'regulate' | 'begin-again'

/** One thing the clock has not shown yet, with its figures: days, seconds, seconds a day, hours or quarters, as their names say. */
export type ToShow =
  | { readonly code: 'days'; readonly values: { observedDays: number; neededDays: number } }
  | { readonly code: 'wind'; readonly values: { windEveryDays: number } }
  | { readonly code: 'hours-struck'; readonly values: { hours: string } }
  | { readonly code: 'quarters'; readonly values: { quarters: string } }
  | {
      readonly code: 'rate'
      readonly values: { ratePerDay: number | null; plusMinus: number | null; limitPerDay: number }
    }
  | {
      readonly code: 'steadiness'
      readonly values: { scatterSeconds: number | null; limitSeconds: number; walkPerDay: number }
    }
  | { readonly code: 'gap'; readonly values: { unobservedDays: number } }
  | {
      readonly code: 'self-correction' | 'beat-in-case' | 'sounds' | 'silent' | 'repeat'
      readonly values: Readonly<Record<string, never>>
    }

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

/** Never from one day, nor from two readings (common practice). */
const fewestPoints = 3
const fewestDays = 2

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

/** What the running test holds. */
interface Evidence {
  readonly readings: readonly ShelfReading[]
  readonly observed: Observed
  readonly neededDays: number
  /** Without the curve of a spring's winds. */
  readonly stretches: readonly Stretch[]
  readonly scatter: number | null
  /** How far its rate walks one way over the test, in seconds a day. */
  readonly walk: number
  readonly sheet: SoundSheet
}

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

/** The last stretch where a rate can be told from it. */
function telling({ stretches }: Evidence) {
  const last = stretches.at(-1)
  const enough = last?.line && last.points.length >= fewestPoints && stretchDays(last) >= fewestDays
  return enough ? last.line : null
}

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

function toBeShown(input: VerdictInput, evidence: Evidence): ToShow[] {
  const missing = running(input, evidence)
  return [
    ...missing,
    ...sounds(input, evidence),
    ...beatInCase(input, evidence),
    ...going(input, evidence),
    ...gap(input, evidence, missing.length > 0),
  ]
}

/** Enough days, and one whole wind where the policy lasts as long as one. */
function running({ clock }: VerdictInput, { observed: seen, neededDays }: Evidence): ToShow[] {
  const everyDays = windEveryDays(clock.durationDays)
  return [
    ...(isShort(seen.days, neededDays)
      ? [{ code: 'days' as const, values: { observedDays: seen.days, neededDays } }]
      : []),
    ...(clock.isWound && neededDays >= everyDays && seen.winds === 0
      ? [{ code: 'wind' as const, values: { windEveryDays: everyDays } }]
      : []),
  ]
}

/** A test that ends an hour before its hour is through: nobody reads a clock to the minute (our own choice). */
const isShort = (days: number, needed: number): boolean => days < needed - 1 / 24

function sounds({ clock }: VerdictInput, { sheet }: Evidence): ToShow[] {
  const [hours, quarters] = [hoursToHear(sheet, clock), quartersToHear(sheet, clock)]
  const missing: ToShow[] = []
  if (clock.strike === 'unknown' || clock.chime === null) missing.push({ code: 'sounds', values: {} })
  const isStruckWrong = sheet.strike?.right === false || sheet.half?.right === false
  if (hours.length > 0 || isStruckWrong)
    missing.push({ code: 'hours-struck', values: { hours: hours.join(', ') } })
  if (quarters.length > 0 || (clock.chime && sheet.chime?.right === false && !sheet.selfCorrected?.right))
    missing.push({ code: 'quarters', values: { quarters: quarters.join(', ') } })
  if (clock.chime && clock.chimeCorrects && !sheet.selfCorrected?.right)
    missing.push({ code: 'self-correction', values: {} })
  if (sheet.silent?.right === false) missing.push({ code: 'silent', values: {} })
  if (sheet.repeats?.right === false) missing.push({ code: 'repeat', values: {} })
  return missing
}

/** The beat is looked at again once the clock stands in its case, and again wherever it is moved; that it was cased outlives a fault. */
function beatInCase({ clock, readings: all }: VerdictInput, { readings }: Evidence): ToShow[] {
  if (!clock.setInBeat) return []
  const cased = all.findLastIndex(({ event }) => event === 'cased')
  const stood = all[Math.max(cased, cased < 0 ? -1 : all.findLastIndex(({ event }) => event === 'moved'))]
  const looked = stood && readings.findLast(one => one.at >= stood.at && one.inBeat !== undefined)
  return looked?.inBeat ? [] : [{ code: 'beat-in-case', values: {} }]
}

function going({ limits }: VerdictInput, evidence: Evidence): ToShow[] {
  const line = telling(evidence)
  const { scatter, walk } = evidence
  const missing: ToShow[] = []
  if (!line || Math.abs(line.slope) > limits.perDay || line.plusMinus > limits.perDay)
    missing.push({
      code: 'rate',
      values: {
        ratePerDay: line?.slope ?? null,
        plusMinus: line?.plusMinus ?? null,
        limitPerDay: limits.perDay,
      },
    })
  if (!isSteady(evidence, limits))
    missing.push({
      code: 'steadiness',
      values: { scatterSeconds: scatter, limitSeconds: limits.steady, walkPerDay: walk },
    })
  return missing
}

/** A rate that walks one way by more than half its limit over the test is not steady (our own choice). */
const isSteady = ({ scatter, walk }: Evidence, { steady, perDay }: RateLimits): boolean =>
  scatter !== null && scatter <= steady && Math.abs(walk) <= perDay / 2

/** Days that nobody watched and that are missing now, or a last reading so long ago that the clock may have stopped since. */
function gap({ policy, now, closedDays }: VerdictInput, evidence: Evidence, isMissing: boolean): ToShow[] {
  const { readings, observed: seen } = evidence
  const last = readings.at(-1)
  const watch = { readingEveryDays: policy.readingEveryDays, closedDays }
  const isStale = last !== undefined && !isWatched(msOf(last), Date.parse(now), watch)
  return isStale || (isMissing && seen.unobservedDays > 0)
    ? [{ code: 'gap', values: { unobservedDays: seen.unobservedDays } }]
    : []
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
