import { localTimeProblems } from '../calendar/checks.ts'
import { dayMinutes } from '../calendar/units.ts'
import { type Problem, problem } from '../problems.ts'
import type { Duration } from '../vocabulary/clock.ts'
import type { RunInInput } from './input.ts'
import { movements, stageMinutes, stagesMinutes } from './movement.ts'
import type { RunInPolicy, Stage } from './policy.ts'

const longestStageDays = 3660

/** What is wrong with a plan's input, but for its calendar. */
export function planProblems({ duration, trains, start, policy }: RunInInput): Problem[] {
  const problems = localTimeProblems(start, 'start')
  if (!wholeWithin(trains, 3)) problems.push(problem('runIn.trains', 'trains'))
  return [...problems, ...policyProblems(policy, duration)]
}

/**
 * What is wrong with a policy for a movement: `runIn.duration`, `runIn.readingEveryDays`, `runIn.noStage` and those
 * of its stages.
 */
export function policyProblems({ stages, readingEveryDays }: RunInPolicy, duration: Duration): Problem[] {
  const known = Object.hasOwn(movements, duration)
  const problems = known ? [] : [problem('runIn.duration', 'duration')]
  if (!wholeWithin(readingEveryDays, longestStageDays))
    problems.push(problem('runIn.readingEveryDays', 'policy.readingEveryDays', { longest: longestStageDays }))
  if (stages.length === 0) problems.push(problem('runIn.noStage', 'policy.stages'))
  // The shortest interval stands in for an unknown movement's, so that the stages are looked at all the same.
  const movement = known ? duration : '30-hour'
  stages.forEach((stage, i) => {
    problems.push(...stageProblems(stage, movement, `policy.stages[${i}]`))
  })
  return problems.length > 0 ? problems : lengthProblems(stages, movement)
}

function stageProblems(stage: Stage, duration: Duration, field: string): Problem[] {
  const { name, winds, days } = stage
  const problems: Problem[] = []
  if (name.trim() === '') problems.push(problem('runIn.stageName', `${field}.name`))
  if ((winds === undefined) === (days === undefined)) problems.push(problem('runIn.windsOrDays', field))
  else if (
    !wholeWithin(stageMinutes(stage, duration) / dayMinutes, longestStageDays) ||
    !wholeWithin(winds ?? 1, 3660)
  )
    problems.push(
      problem('runIn.stageLength', `${field}.${winds === undefined ? 'days' : 'winds'}`, {
        longest: longestStageDays,
      }),
    )
  return problems
}

const lengthProblems = (stages: readonly Stage[], duration: Duration): Problem[] => {
  const days = stagesMinutes(stages, duration) / dayMinutes
  return days > 2 * longestStageDays
    ? [problem('runIn.stageLength', 'policy.stages', { longest: 2 * longestStageDays })]
    : []
}

const wholeWithin = (n: number, most: number): boolean => Number.isInteger(n) && n >= 1 && n <= most
