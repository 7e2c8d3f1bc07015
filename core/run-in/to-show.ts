import type { Instant } from '../calendar/zone.ts'
import type { RateLimits } from './limits.ts'
import { windEveryDays } from './movement.ts'
import { isWatched, type Observed, type Watch } from './observed.ts'
import type { RunInPolicy } from './policy.ts'
import type { ShelfClock } from './shelf-clock.ts'
import { msOf, type ShelfReading } from './shelf-reading.ts'
import { hoursToHear, quartersToHear, type SoundSheet } from './sound-sheet.ts'
import { type Stretch, stretchDays } from './stretches.ts'

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

/** What the running test holds. */
export interface Evidence {
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

/** Never from one day, nor from two readings (common practice). */
const fewestPoints = 3
const fewestDays = 2

/** The last stretch where a rate can be told from it. */
export function telling({ stretches }: Evidence) {
  const last = stretches.at(-1)
  const enough = last?.line && last.points.length >= fewestPoints && stretchDays(last) >= fewestDays
  return enough ? last.line : null
}

/** Everything that still has to be shown before the clock may pass. */
export function toBeShown(input: VerdictInput, evidence: Evidence): ToShow[] {
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
export const isSteady = ({ scatter, walk }: Evidence, { steady, perDay }: RateLimits): boolean =>
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
