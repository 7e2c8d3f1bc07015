import { allocate } from '../money/allocate.ts'
import { divRound } from '../money/div-round.ts'
import { type Minor, minor } from '../money/minor.ts'

/** What was billed for the labour of a repair, and who worked how long on it. */
export interface EarnedFact {
  /** Without tax, less what was credited. */
  readonly labourMinor: Minor
  readonly worked: readonly { readonly personId: number | null; readonly minutes: number }[]
}

/** What one person's hours earned; `personId` is null for nobody named. */
export interface EarnedRow {
  readonly personId: number | null
  readonly minutes: number
  readonly earnedMinor: Minor
  /** For each hour, half up; null where no time is on record. */
  readonly perHourMinor: Minor | null
}

/** What was earned, the person with the most hours first, and all together. */
export interface Earned {
  readonly rows: readonly EarnedRow[]
  /** Billed for labour on which no time is on record: nobody's hour. */
  readonly unworkedMinor: Minor
  readonly total: Omit<EarnedRow, 'personId'>
}

/** Minor units for each hour, half away from zero. */
const perHour = (earned: Minor, minutes: number): Minor | null =>
  minutes === 0 ? null : minor(Number(divRound(BigInt(earned) * 60n, BigInt(minutes), 'half-up')))

const plus = (a: Minor, b: Minor): Minor => minor(a + b)

/** The labour of one repair shared out by the minutes each worked on it, to the last minor unit. */
function shares({ labourMinor, worked }: EarnedFact) {
  const shared = allocate(
    labourMinor,
    worked.map(({ minutes }) => minutes),
  )
  return shared.ok ? worked.map((one, i) => ({ ...one, earnedMinor: shared.value[i] ?? minor(0) })) : []
}

/** What each bench hour earned: the labour billed for each repair, shared by the minutes worked on it. All shares add up to what was billed. */
export function earnedByPerson(repairs: readonly EarnedFact[]): Earned {
  const people = new Map<number | null, { minutes: number; earnedMinor: Minor }>()
  let unworkedMinor = minor(0)
  for (const repair of repairs) {
    const shared = shares(repair)
    if (shared.length === 0) unworkedMinor = plus(unworkedMinor, repair.labourMinor)
    for (const { personId, minutes, earnedMinor } of shared) {
      const sofar = people.get(personId) ?? { minutes: 0, earnedMinor: minor(0) }
      people.set(personId, {
        minutes: sofar.minutes + minutes,
        earnedMinor: plus(sofar.earnedMinor, earnedMinor),
      })
    }
  }
  const rows = [...people]
    .map(([personId, sum]) => ({ personId, ...sum, perHourMinor: perHour(sum.earnedMinor, sum.minutes) }))
    .sort((a, b) => b.minutes - a.minutes || (a.personId ?? 0) - (b.personId ?? 0))
  const minutes = rows.reduce((sum, row) => sum + row.minutes, 0)
  const earnedMinor = rows.reduce((sum, row) => plus(sum, row.earnedMinor), minor(0))
  return { rows, unworkedMinor, total: { minutes, earnedMinor, perHourMinor: perHour(earnedMinor, minutes) } }
}
