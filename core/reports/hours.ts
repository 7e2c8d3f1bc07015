/** A repair's hours under the name it is counted by. */
export interface HoursFact<K extends string> {
  readonly key: K
  readonly estimatedMinutes: number
  readonly workedMinutes: number
}

/** Estimated against worked hours of all repairs of one name. */
export interface HoursRow<K extends string> extends HoursFact<K> {
  readonly repairs: number
  /** Worked more (+) or less (−) than estimated. */
  readonly overMinutes: number
  /** Worked for each hundred estimated, rounded; null where nothing was estimated. */
  readonly workedPercent: number | null
}

/** A whole percentage, half up; null of nothing. */
export const percentOf = (part: number, whole: number): number | null =>
  whole === 0 ? null : Math.round((part * 100) / whole)

const total = <T>(rows: readonly T[], of: (row: T) => number): number =>
  rows.reduce((sum, row) => sum + of(row), 0)

function hoursRow<K extends string>(key: K, facts: readonly HoursFact<K>[]): HoursRow<K> {
  const estimatedMinutes = total(facts, fact => fact.estimatedMinutes)
  const workedMinutes = total(facts, fact => fact.workedMinutes)
  return {
    key,
    repairs: facts.length,
    estimatedMinutes,
    workedMinutes,
    overMinutes: workedMinutes - estimatedMinutes,
    workedPercent: percentOf(workedMinutes, estimatedMinutes),
  }
}

/** Estimated against worked hours by name, the most frequent first, equals in the order of their names. */
export const estimatedAgainstWorked = <K extends string>(facts: readonly HoursFact<K>[]): HoursRow<K>[] =>
  [...Map.groupBy(facts, fact => fact.key)]
    .map(([key, rows]) => hoursRow(key, rows))
    .sort((a, b) => b.repairs - a.repairs || (a.key < b.key ? -1 : 1))
