import { addDays, addMonths, type CivilDate } from './civil.ts'

/** Days from one to another, both included. */
export interface Period {
  readonly from: CivilDate
  readonly to: CivilDate
}

/** How many months each kind of period has. Quarters are those of the calendar year, beginning in January. */
const months = { month: 1, quarter: 3, year: 12 } as const

export type PeriodKind = keyof typeof months

/** The month, quarter or year that `on` lies in, or the one `ago` periods earlier. */
export function periodOf(kind: PeriodKind, on: CivilDate, ago = 0): Period {
  const length = months[kind]
  const month = Number(on.slice(5, 7))
  const begun = (month - 1) % length
  const from = addMonths(`${on.slice(0, 7)}-01`, -begun - ago * length)
  return { from, to: addDays(addMonths(from, length), -1) }
}
