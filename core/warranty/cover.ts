import { dateProblems } from '../calendar/checks.ts'
import { type CivilDate, daysBetween } from '../calendar/civil.ts'
import { whenGood } from '../checked.ts'
import { bad, type Checked, good, type Problem, problem } from '../problems.ts'
import type { Exclusion } from '../vocabulary/work.ts'
import { type TermLength, termProblems, warrantyTerm } from './term.ts'

/** What a warranty of one scope promises, as it was printed when it was given. */
export interface WarrantyTerms extends TermLength {
  /** What a comeback put right under this warranty does to the term: it begins anew at hand-over, or goes on. */
  readonly onComeback: 'restart' | 'continue'
  /** Whether days the clock stays in the shop are added at the end. */
  readonly pausesInShop: boolean
  readonly exclusions: readonly Exclusion[]
}

/**
 * One later visit of the clock: taken in, handed back (null while it is here), and whether it was put right under
 * this warranty.
 */
export interface Stay {
  readonly from: CivilDate
  readonly to: CivilDate | null
  readonly underWarranty: boolean
}

/** A warranty given for a repair, what has happened to the clock since, and what is asked. */
export interface CoverInput {
  readonly terms: WarrantyTerms
  readonly start: CivilDate
  readonly stays: readonly Stay[]
  /** What the fault comes from or the case falls under, as found. */
  readonly causes: readonly Exclusion[]
  readonly on: CivilDate
}

/** One reason a person can read through the catalogue (`warranty.*`). */
export type CoverReason =
  | { readonly code: 'excluded'; readonly values: { readonly cause: Exclusion } }
  | {
      readonly code: 'notBegun' | 'ended' | 'inTerm' | 'paused' | 'restarted'
      readonly values: Readonly<Record<string, string | number>>
    }

/** Whether the fault is covered on the day, and every reason for the answer. */
export interface Cover {
  readonly covered: boolean
  readonly lastDay: CivilDate
  readonly daysLeft: number
  /** Where the running term began: the start, or the hand-over of the last comeback that restarted it. */
  readonly began: CivilDate
  readonly pausedDays: number
  readonly reasons: readonly CoverReason[]
}

/**
 * Covered today or not, and why. Stays are taken in order of date; one that began after the term had ended counts
 * for nothing. Problems: those of `warrantyTerm`, `warranty.stayEndsBeforeItBegins`, `warranty.staysOutOfOrder`,
 * `warranty.comeback`.
 */
export function warrantyCover(input: CoverInput): Checked<Cover> {
  const problems = [...termProblems({ ...input.terms, start: input.start }), ...coverProblems(input)]
  if (problems.length > 0) return bad(problems)
  return whenGood(runningTerm(input), running =>
    whenGood(warrantyTerm({ ...input.terms, ...running, on: input.on }), term => {
      const excluded = input.causes.filter(cause => input.terms.exclusions.includes(cause))
      return good({
        covered: term.covered && excluded.length === 0,
        lastDay: term.lastDay,
        daysLeft: term.daysLeft,
        began: running.start,
        pausedDays: running.pausedDays,
        reasons: [
          ...termReasons(input, running, term.lastDay),
          ...excluded.map(cause => ({ code: 'excluded' as const, values: { cause } })),
        ],
      })
    }),
  )
}

interface Running {
  readonly start: CivilDate
  readonly pausedDays: number
}

/** The term after every stay up to the day asked about. */
function runningTerm({ terms, start, stays, on }: CoverInput): Checked<Running> {
  let running: Running = { start, pausedDays: 0 }
  for (const stay of stays.filter(({ from }) => from <= on)) {
    const term = warrantyTerm({ ...terms, ...running, on: stay.from })
    if (!term.ok) return term
    if (term.value.covered) running = afterStay(running, stay, terms, on)
  }
  return good(running)
}

function afterStay(running: Running, stay: Stay, terms: WarrantyTerms, on: CivilDate): Running {
  const back = stay.to !== null && stay.to <= on ? stay.to : null
  if (back !== null && stay.underWarranty && terms.onComeback === 'restart')
    return { start: back, pausedDays: 0 }
  if (!terms.pausesInShop) return running
  return { ...running, pausedDays: running.pausedDays + daysBetween(stay.from, back ?? on) }
}

function termReasons({ start, on }: CoverInput, running: Running, lastDay: CivilDate): CoverReason[] {
  const reasons: CoverReason[] = []
  if (running.start !== start) reasons.push({ code: 'restarted', values: { onDate: running.start } })
  if (running.pausedDays > 0) reasons.push({ code: 'paused', values: { days: running.pausedDays } })
  if (on < start) reasons.push({ code: 'notBegun', values: { startDate: start } })
  else if (on > lastDay) reasons.push({ code: 'ended', values: { lastDate: lastDay } })
  else reasons.push({ code: 'inTerm', values: { lastDate: lastDay } })
  return reasons
}

function coverProblems({ terms, stays, on }: CoverInput): Problem[] {
  const problems = dateProblems(on, 'on')
  if (terms.onComeback !== 'restart' && terms.onComeback !== 'continue')
    problems.push(problem('warranty.comeback', 'terms.onComeback'))
  stays.forEach((stay, i) => {
    problems.push(...stayProblems(stay, stays[i - 1], `stays[${i}]`))
  })
  return problems
}

function stayProblems({ from, to }: Stay, before: Stay | undefined, field: string): Problem[] {
  const dates = [
    ...dateProblems(from, `${field}.from`),
    ...(to === null ? [] : dateProblems(to, `${field}.to`)),
  ]
  if (dates.length > 0) return dates
  if (to !== null && to < from) return [problem('warranty.stayEndsBeforeItBegins', `${field}.to`)]
  const overlaps = before && (before.to === null || from < before.to)
  return overlaps ? [problem('warranty.staysOutOfOrder', `${field}.from`)] : []
}
