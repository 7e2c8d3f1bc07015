import { dayMinutes } from '../calendar/units.ts'
import { minutesOfHours } from '../labour/hours.ts'
import { type Problem, problem } from '../problems.ts'

/** Hours of a week. */
export const weekHours = (7 * dayMinutes) / 60

/** What is wrong with a person's bench hours a week, as decimal text; '' says that nobody counted them and is right. */
export function benchHoursProblems(hours: string): Problem[] {
  const minutes = minutesOfHours([hours])
  return minutes < 0 || minutes > weekHours * 60
    ? [problem('person.benchHours', 'benchHours', { most: weekHours })]
    : []
}
