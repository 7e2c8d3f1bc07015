import { localTimeProblems } from '../calendar/checks.ts'
import { type Problem, problem } from '../problems.ts'
import type { Duration } from '../vocabulary/clock.ts'
import { movements, stageMinutes } from './movement.ts'
import type { RunInInput } from './plan.ts'
import type { RunInPolicy, Stage } from './policy.ts'

const longestStageDays = 3660

/** What is wrong with a plan's input, but for its calendar. */
export function planProblems({ duration, trains, start, policy }: RunInInput): Problem[] {
  const problems = localTimeProblems(start, 'start')
  if (!Object.hasOwn(movements, duration)) problems.push(problem('runIn.duration', 'duration'))
  if (!wholeWithin(trains, 3)) problems.push(problem('runIn.trains', 'trains'))
  if (!wholeWithin(policy.readingEveryDays, longestStageDays))
    problems.push(problem('runIn.readingEveryDays', 'policy.readingEveryDays', { longest: longestStageDays }))
  if (policy.stages.length === 0) problems.push(problem('runIn.noStage', 'policy.stages'))
  const known = Object.hasOwn(movements, duration) ? duration : '400-day'
  policy.stages.forEach((stage, i) => {
    problems.push(...stageProblems(stage, known, `policy.stages[${i}]`))
  })
  if (problems.length === 0) problems.push(...lengthProblems(policy, known))
  return problems
}

function stageProblems(stage: Stage, duration: Duration, field: string): Problem[] {
  const { name, winds, days } = stage
  const problems: Problem[] = []
  if (name.trim() === '') problems.push(problem('runIn.stageName', `${field}.name`))
  if ((winds === undefined) === (days === undefined)) problems.push(problem('runIn.windsOrDays', field))
  else if (
    !wholeWithin(stageMinutes(stage, duration) / 1440, longestStageDays) ||
    !wholeWithin(winds ?? 1, 3660)
  )
    problems.push(
      problem('runIn.stageLength', `${field}.${winds === undefined ? 'days' : 'winds'}`, {
        longest: longestStageDays,
      }),
    )
  return problems
}

const lengthProblems = ({ stages }: RunInPolicy, duration: Duration): Problem[] => {
  const days = stages.reduce((sum, stage) => sum + stageMinutes(stage, duration), 0) / 1440
  return days > 2 * longestStageDays
    ? [problem('runIn.stageLength', 'policy.stages', { longest: 2 * longestStageDays })]
    : []
}

const wholeWithin = (n: number, most: number): boolean => Number.isInteger(n) && n >= 1 && n <= most
