import type { CivilDate } from '../calendar/civil.ts'
import type { LocalTime } from '../calendar/local.ts'
import { addWorkMinutes, nextOpen, type Opening, workCalendar } from '../calendar/work.ts'
import { whenGood } from '../checked.ts'
import { bad, type Checked, good, problem } from '../problems.ts'
import { runInPlan } from '../run-in/plan.ts'
import type { RunInPolicy } from '../run-in/policy.ts'
import type { Duration } from '../vocabulary/clock.ts'

/** What an estimated date is reckoned from. */
export interface EstimatedDateInput extends Opening {
  readonly now: LocalTime
  /** Bench minutes agreed for the repairs ahead of this one in the queue. */
  readonly aheadMinutes: number
  /** Bench minutes this repair still needs. */
  readonly ownMinutes: number
  /** How many work at the bench, 1 or more: the queue ahead is shared between them, one repair is not. */
  readonly benches: number
  /** The last day on which a part or outside work is due back, null when nothing is away. */
  readonly dueBack: CivilDate | null
  /** The test the clock then stands; null where it needs none. */
  readonly runIn: {
    readonly duration: Duration
    readonly trains: number
    readonly policy: RunInPolicy
  } | null
}

/** One part of the time until a clock is ready, told apart so that the test weeks are not taken for delay. */
export interface DatePart {
  readonly part: 'queue' | 'waiting' | 'bench' | 'running-in'
  readonly from: LocalTime
  readonly to: LocalTime
}

/** An estimated date, never a promise, with its parts in order; parts of no length are left out. */
export interface EstimatedDate {
  readonly readyOn: CivilDate
  readonly parts: readonly DatePart[]
}

/**
 * The date by which a clock can be estimated ready: the queue ahead of it worked off, what is away waited for, its own bench work
 * done, and its run-in stood. Problems: those of the calendar and of the plan, `estimatedDate.benches`, `estimatedDate.minutes`.
 */
export function estimatedDate(input: EstimatedDateInput): Checked<EstimatedDate> {
  if (!Number.isInteger(input.benches) || input.benches < 1)
    return bad([problem('estimatedDate.benches', 'benches')])
  const minutes = [input.aheadMinutes, input.ownMinutes]
  if (minutes.some(n => !Number.isInteger(n) || n < 0))
    return bad([problem('estimatedDate.minutes', 'ownMinutes')])
  return whenGood(benchTimes(input), times => ready(input, times))
}

interface BenchTimes {
  readonly turn: LocalTime
  readonly begin: LocalTime
  readonly done: LocalTime
}

/** When its turn comes, when everything for it is there, and when its bench work is done. */
function benchTimes(input: EstimatedDateInput): Checked<BenchTimes> {
  return whenGood(workCalendar(input), calendar => {
    const shared = Math.ceil(input.aheadMinutes / input.benches)
    return whenGood(addWorkMinutes(calendar, input.now, shared), turn => {
      const back = input.dueBack === null ? turn : `${input.dueBack}T00:00`
      return whenGood(nextOpen(calendar, latest(back, turn)), begin =>
        whenGood(addWorkMinutes(calendar, begin, input.ownMinutes), done => good({ turn, begin, done })),
      )
    })
  })
}

/** Local times sort as text. */
const latest = (...times: [LocalTime, ...LocalTime[]]): LocalTime => times.toSorted().at(-1) ?? times[0]

function ready(input: EstimatedDateInput, { turn, begin, done }: BenchTimes): Checked<EstimatedDate> {
  const bench: DatePart[] = [
    { part: 'queue', from: input.now, to: turn },
    { part: 'waiting', from: turn, to: input.dueBack === null ? turn : begin },
    { part: 'bench', from: begin, to: done },
  ]
  if (input.runIn === null) return good({ readyOn: done.slice(0, 10), parts: bench.filter(hasLength) })
  const { week, holidays, closures } = input
  return whenGood(runInPlan({ week, holidays, closures, ...input.runIn, start: done }), plan => {
    const to = plan.stages.at(-1)?.to ?? done
    return good({
      readyOn: plan.ready,
      parts: [...bench, { part: 'running-in' as const, from: done, to }].filter(hasLength),
    })
  })
}

const hasLength = ({ from, to }: DatePart): boolean => from < to
