import { workTimeProblems } from '../../../core/calendar/checks.ts'
import { addWorkMinutes, type WorkWeek, workCalendar } from '../../../core/calendar/work.ts'
import { gather, unless, whenGood } from '../../../core/checked.ts'
import { good } from '../../../core/problems.ts'
import { calculation } from './calculation.ts'
import { number, record } from './shape.ts'
import { holidays, localTime, week } from './shapes.ts'

interface Input {
  readonly week: WorkWeek
  readonly holidays: readonly string[]
  readonly from: string
  readonly minutes: number
}

export default calculation(record<Input>({ week, holidays, from: localTime, minutes: number }), input => {
  const checked = gather({
    calendar: workCalendar(input),
    times: unless(workTimeProblems(input.from, 'from', input.minutes), () => true),
  })
  return whenGood(checked, ({ calendar }) =>
    whenGood(addWorkMinutes(calendar, input.from, input.minutes), to => good({ to })),
  )
})
