import { type Problem, problem } from '../problems.ts'
import { isCivilDate } from './civil.ts'
import { isLocalTime } from './local.ts'
import { instantMs } from './zone.ts'

/** `date.notADate` unless `text` is a date that exists. */
export const dateProblems = (text: string, field: string): Problem[] =>
  isCivilDate(text) ? [] : [problem('date.notADate', field, { text })]

/** `date.notALocalTime` unless `text` is a local time that exists. */
export const localTimeProblems = (text: string, field: string): Problem[] =>
  isLocalTime(text) ? [] : [problem('date.notALocalTime', field, { text })]

/** `date.notAnInstant` unless `text` is an ISO 8601 instant ending in Z that exists. */
export const instantProblems = (text: string, field: string): Problem[] =>
  instantMs(text) === undefined ? [problem('date.notAnInstant', field, { text })] : []
