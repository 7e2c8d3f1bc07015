import { bad, type Checked, good, type Problem, problem } from '../problems.ts'
import { countProblems, figureProblems } from './figures.ts'

/** A going train from the centre arbor: the wheels, the pinions they drive in order, and the escape wheel's teeth. */
export interface TrainInput {
  readonly wheels: readonly number[]
  readonly pinions: readonly number[]
  readonly escape: number
}

/** How fast the train lets the pendulum or balance beat. */
export interface Train {
  readonly bph: number
  readonly beatsPerMinute: number
}

const teeth = { least: 1, most: 10_000 }
const mostPairs = 12

/**
 * Beats per hour: 2 × escape teeth × Π wheels ÷ Π pinions (GO). Problems: `train.empty`, `train.pairs`,
 * `train.tooLong`, teeth out of 1 to 10000.
 */
export function train({ wheels, pinions, escape: escapeTeeth }: TrainInput): Checked<Train> {
  const problems = [...pairProblems(wheels, pinions), ...countProblems(escapeTeeth, 'escape', teeth)]
  if (problems.length > 0) return bad(problems)
  const bph = (2 * escapeTeeth * product(wheels)) / product(pinions)
  return good({ bph, beatsPerMinute: bph / 60 })
}

const product = (counts: readonly number[]): number => counts.reduce((all, count) => all * count, 1)

function pairProblems(wheels: readonly number[], pinions: readonly number[]): Problem[] {
  const problems = [
    ...wheels.flatMap((count, i) => countProblems(count, `wheels[${i}]`, teeth)),
    ...pinions.flatMap((count, i) => countProblems(count, `pinions[${i}]`, teeth)),
  ]
  if (wheels.length === 0) problems.push(problem('train.empty', 'wheels'))
  if (wheels.length !== pinions.length)
    problems.push(problem('train.pairs', 'pinions', { wheels: wheels.length, pinions: pinions.length }))
  if (wheels.length > mostPairs) problems.push(problem('train.tooLong', 'wheels', { most: mostPairs }))
  return problems
}

/**
 * The pairs between the barrel and the centre arbor: each driving wheel and the pinion it drives, the great wheel
 * first.
 */
export interface DurationInput {
  readonly wheels: readonly number[]
  readonly pinions: readonly number[]
  /** Turns of the barrel or great wheel the clock may use. */
  readonly turns: number
}

/** How long the clock goes. */
export interface RunningTime {
  readonly hoursPerTurn: number
  readonly hours: number
  readonly days: number
}

/**
 * Hours = Π wheels ÷ Π pinions × turns, the centre arbor turning once an hour (GO). Problems as for `train`, and
 * turns out of 0.01 to 1000.
 */
export function runningTime({ wheels, pinions, turns }: DurationInput): Checked<RunningTime> {
  const problems = [
    ...pairProblems(wheels, pinions),
    ...figureProblems(turns, 'turns', { least: 0.01, most: 1000 }),
  ]
  if (problems.length > 0) return bad(problems)
  const hoursPerTurn = product(wheels) / product(pinions)
  return good({ hoursPerTurn, hours: hoursPerTurn * turns, days: (hoursPerTurn * turns) / 24 })
}
