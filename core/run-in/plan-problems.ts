import { localTimeProblems } from '../calendar/checks.ts'
import { type Problem, problem } from '../problems.ts'
import type { Duration } from '../vocabulary/clock.ts'
import type { RunInInput } from './input.ts'
import { movements, stageDays } from './movement.ts'
import type { RunInPolicy, Stage } from './policy.ts'

const longestStageDays = 3660

/** What is wrong with a plan's input, but for its calendar. */
export function planProblems({ duration, trains, start, policy }: RunInInput): Problem[] {
  const problems = localTimeProblems(start, 'start')
  if (!wholeWithin(trains, 3)) problems.push(problem('runIn.trains', 'trains'))
  return [...problems, ...policyProblems(policy, duration)]
}

/** What is wrong with a policy for a movement: `runIn.duration` and those of `stagesProblems`. */
export function policyProblems(policy: RunInPolicy, duration: Duration): Problem[] {
  const known = Object.hasOwn(movements, duration)
  // The shortest interval stands in for an unknown movement's, so that the stages are looked at all the same.
  const { windEveryDays } = movements[known ? duration : '30-hour']
  return [...(known ? [] : [problem('runIn.duration', 'duration')]), ...stagesProblems(policy, windEveryDays)]
}

/** What is wrong with a policy for a movement wound so often: `runIn.readingEveryDays`, `runIn.noStage` and those of its stages. */
export function stagesProblems({ stages, readingEveryDays }: RunInPolicy, everyDays: number): Problem[] {
  const problems: Problem[] = []
  if (!wholeWithin(readingEveryDays, longestStageDays))
    problems.push(problem('runIn.readingEveryDays', 'policy.readingEveryDays', { longest: longestStageDays }))
  if (stages.length === 0) problems.push(problem('runIn.noStage', 'policy.stages'))
  stages.forEach((stage, i) => {
    problems.push(...stageProblems(stage, everyDays, `policy.stages[${i}]`))
  })
  return problems.length > 0 ? problems : lengthProblems(stages, everyDays)
}

function stageProblems(stage: Stage, everyDays: number, field: string): Problem[] {
  const { name, winds, days } = stage
  const problems: Problem[] = []
  if (name.trim() === '') problems.push(problem('runIn.stageName', `${field}.name`))
  if ((winds === undefined) === (days === undefined)) problems.push(problem('runIn.windsOrDays', field))
  else if (!wholeWithin(stageDays(stage, everyDays), longestStageDays) || !wholeWithin(winds ?? 1, 3660))
    problems.push(
      problem('runIn.stageLength', `${field}.${winds === undefined ? 'days' : 'winds'}`, {
        longest: longestStageDays,
      }),
    )
  return problems
}

const lengthProblems = (stages: readonly Stage[], everyDays: number): Problem[] => {
  const days = stages.reduce((sum, stage) => sum + stageDays(stage, everyDays), 0)
  return days > 2 * longestStageDays
    ? [problem('runIn.stageLength', 'policy.stages', { longest: 2 * longestStageDays })]
    : []
}

const wholeWithin = (n: number, most: number): boolean => Number.isInteger(n) && n >= 1 && n <= most
