import type { Duration } from '../vocabulary/clock.ts'

/**
 * One stage of a run-in: so many full winding intervals, or so many days, of running. Exactly one of the two is
 * given.
 */
export interface Stage {
  readonly name: string
  readonly winds?: number | undefined
  readonly days?: number | undefined
}

/** What the shop asks of a clock on the run-in shelf. */
export interface RunInPolicy {
  readonly stages: readonly Stage[]
  readonly readingEveryDays: number
}

/** Where a figure of a policy comes from; no published figures by type of movement were found. */
export type PolicySource = 'shop policy' | 'common practice'

/** A policy to begin with and where it comes from. */
export interface PolicyDefault {
  readonly policy: RunInPolicy
  readonly source: PolicySource
}

/**
 * Editable defaults by movement, two stages each: out of the case, then in it (common practice), at least one full
 * wind, two where the wind is 8 days or less, torsion several weeks. The lengths are shop policy.
 */
export const runInDefaults: Readonly<Record<Duration, PolicyDefault>> = {
  '30-hour': stages({ days: 4 }, { days: 3 }, 1, 'shop policy'),
  '8-day': stages({ winds: 1 }, { winds: 1 }, 1, 'common practice'),
  '14-day': stages({ days: 7 }, { winds: 1 }, 1, 'shop policy'),
  '31-day': stages({ days: 7 }, { days: 24 }, 2, 'shop policy'),
  year: stages({ days: 14 }, { days: 14 }, 2, 'shop policy'),
  '400-day': stages({ days: 14 }, { days: 14 }, 2, 'shop policy'),
}

/** The default policy for a movement that runs so many days: that of the next usual one; of eight days up to a fortnight, a week out of the case and one wind in it. */
export function defaultPolicy(durationDays: number): RunInPolicy {
  if (durationDays < 3) return runInDefaults['30-hour'].policy
  if (durationDays <= 8) return runInDefaults['8-day'].policy
  if (durationDays <= 16) return runInDefaults['14-day'].policy
  return runInDefaults[durationDays <= 62 ? '31-day' : '400-day'].policy
}

function stages(
  outOfCase: Omit<Stage, 'name'>,
  inCase: Omit<Stage, 'name'>,
  readingEveryDays: number,
  source: PolicySource,
): PolicyDefault {
  const named = [
    { name: 'out of the case', ...outOfCase },
    { name: 'in the case', ...inCase },
  ]
  return { policy: { stages: named, readingEveryDays }, source }
}
