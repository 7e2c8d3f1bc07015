import { type Problem, problem } from '../problems.ts'
import { isCivilDate } from './civil.ts'
import { isLocalTime } from './local.ts'

/** `date.notADate` unless `text` is a date that exists. */
export const dateProblems = (text: string, field: string): Problem[] =>
  isCivilDate(text) ? [] : [problem('date.notADate', field, { text })]

/** `date.notALocalTime` unless `text` is a local time that exists. */
export const localTimeProblems = (text: string, field: string): Problem[] =>
  isLocalTime(text) ? [] : [problem('date.notALocalTime', field, { text })]

/** What is wrong with a local time and the whole minutes (0 or more) to be counted from or to it. */
export function workTimeProblems(local: string, field: string, minutes: number): Problem[] {
  const problems = localTimeProblems(local, field)
  if (!Number.isSafeInteger(minutes) || minutes < 0) problems.push(problem('calendar.minutes', 'minutes'))
  return problems
}
