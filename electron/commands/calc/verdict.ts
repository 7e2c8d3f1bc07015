import { unless } from '../../../core/checked.ts'
import { type Problem, problem } from '../../../core/problems.ts'
import { goingOf, isLimitPerDay, type RateLimits, usualLimits } from '../../../core/run-in/limits.ts'
import { logProblems } from '../../../core/run-in/log-problems.ts'
import { windEveryDays } from '../../../core/run-in/movement.ts'
import { stagesProblems } from '../../../core/run-in/plan-problems.ts'
import { defaultPolicy, type RunInPolicy } from '../../../core/run-in/policy.ts'
import { isSetInBeat, isSprung, isWoundBy, type Sounds } from '../../../core/run-in/shelf-clock.ts'
import { type ShelfEvent, type ShelfReading, shelfEvents } from '../../../core/run-in/shelf-reading.ts'
import { shelfVerdict } from '../../../core/run-in/verdict.ts'
import { calculation } from './calculation.ts'
import { stage } from './run-in.ts'
import { choice, list, number, optional, record, text, yesNo } from './shape.ts'
import { instant } from './shapes.ts'

interface Clock {
  readonly kind: string
  readonly power: string
  readonly escapement: string
  readonly durationDays: number
  readonly trains: number
  readonly strike: Exclude<Sounds, 'unknown'>
  readonly chime: boolean
  readonly chimeCorrects: boolean
  readonly counting?: 'rack' | 'count-wheel' | undefined
}

type Policy = RunInPolicy & { readonly limits?: RateLimits | undefined }

interface Asked {
  readonly clock: Clock
  readonly policy?: Policy | undefined
  readonly log: readonly ShelfReading[]
  readonly now: string
}

const asked = record<Asked>({
  clock: record<Clock>({
    kind: text('kind'),
    power: text('power'),
    escapement: text('escapement'),
    durationDays: number,
    trains: number,
    strike: choice('none', 'hours', 'hours-half', 'ship', 'ting-tang', 'passing'),
    chime: yesNo,
    chimeCorrects: yesNo,
    counting: optional(choice('rack', 'count-wheel')),
  }),
  policy: optional(
    record<Policy>({
      stages: list(stage),
      readingEveryDays: number,
      limits: optional(record<RateLimits>({ perDay: number, steady: number })),
    }),
  ),
  log: list(
    record<ShelfReading>({
      at: instant,
      errorSeconds: optional(number),
      leftSeconds: optional(number),
      wound: optional(yesNo),
      stopped: optional(yesNo),
      nutTurns: optional(number),
      event: optional(choice<ShelfEvent>(...shelfEvents)),
      hour: optional(record({ shown: number, counted: number })),
      half: optional(number),
      quarter: optional(
        record<NonNullable<ShelfReading['quarter']>>({ which: number as never, right: yesNo }),
      ),
      twelveRight: optional(yesNo),
      fourRight: optional(yesNo),
      selfCorrected: optional(yesNo),
      silent: optional(yesNo),
      repeats: optional(yesNo),
      inBeat: optional(yesNo),
      strikeRight: optional(yesNo),
      chimeRight: optional(yesNo),
    }),
  ),
  now: instant,
})

const longestDays = 1000

function clockProblems({ durationDays, trains }: Clock): Problem[] {
  const problems: Problem[] = []
  if (!(durationDays >= 0.5 && durationDays <= longestDays))
    problems.push(problem('number.outOfRange', 'clock.durationDays', { least: 0.5, most: longestDays }))
  if (!Number.isInteger(trains) || trains < 1 || trains > 6)
    problems.push(problem('number.outOfRange', 'clock.trains', { least: 1, most: 6 }))
  return problems
}

const limitProblems = (limits: RateLimits): Problem[] =>
  (['perDay', 'steady'] as const).flatMap(which =>
    isLimitPerDay(limits[which]) ? [] : [problem('runIn.limitPerDay', `policy.limits.${which}`)],
  )

function problemsOf({ clock, policy, log, now }: Asked): Problem[] {
  return [
    ...clockProblems(clock),
    ...(policy?.limits ? limitProblems(policy.limits) : []),
    ...(policy ? stagesProblems(policy, windEveryDays(clock.durationDays)) : []),
    ...logProblems(log, now),
  ]
}

function answered({ clock, policy, log, now }: Asked) {
  const { strike, chime, chimeCorrects, durationDays, kind, power, escapement } = clock
  const verdict = shelfVerdict({
    clock: {
      durationDays,
      strike,
      countWheel: clock.counting === 'count-wheel',
      chime,
      chimeCorrects,
      sprung: isSprung(power),
      isWound: isWoundBy(power),
      setInBeat: isSetInBeat(power, escapement, kind),
    },
    policy: policy ?? defaultPolicy(durationDays),
    limits: policy?.limits ?? usualLimits[goingOf(clock)],
    readings: log,
    now,
  })
  const { toShow, observedDays, ratePerDay, plusMinus, scatterSeconds, suggest } = verdict
  return {
    verdict: verdict.verdict,
    toShow: toShow.map(({ code }) => code),
    observedDays,
    ratePerDay,
    plusMinus,
    scatterSeconds,
    suggest,
  }
}

export default calculation(asked, given => unless(problemsOf(given), () => answered(given)))
