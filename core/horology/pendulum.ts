import { bad, type Checked, good, type Problem, problem } from '../problems.ts'
import { figureProblems } from './figures.ts'
import { gravityAt, standardGravity } from './gravity.ts'

/**
 * Exactly one of beats per hour or length, and exactly one of g (m/s²) or latitude (degrees), the latter with a
 * height in metres.
 */
export interface PendulumInput {
  readonly bph?: number | undefined
  readonly lengthMm?: number | undefined
  readonly g?: number | undefined
  readonly latitude?: number | undefined
  readonly heightMetres?: number | undefined
}

/** A simple pendulum, with the gravity that was used. A real rod with its bob is of another length. */
export interface Pendulum {
  readonly bph: number
  readonly lengthMm: number
  readonly beatSeconds: number
  readonly g: number
  readonly gSource: 'given' | 'standard' | 'latitude' | 'latitude and height'
}

/** Seconds of one beat: t = π √(L ÷ g). Small arcs. */
export const beatSeconds = (lengthMm: number, g: number = standardGravity): number =>
  Math.PI * Math.sqrt(lengthMm / 1000 / g)

/** Millimetres of the simple pendulum that beats so: L = g (t ÷ π)². */
export const pendulumLengthMm = (beat: number, g: number = standardGravity): number =>
  g * (beat / Math.PI) ** 2 * 1000

/**
 * The pendulum. Problems: `pendulum.oneOf` (neither or both of a pair), `pendulum.heightAlone`, `number.outOfRange`
 * for bph 1 to 100000, length 0.01 to 1000000 mm, g 1 to 100 m/s², latitude −90 to 90, height −500 to 10000 m.
 */
export function pendulum(input: PendulumInput): Checked<Pendulum> {
  const problems = pendulumProblems(input)
  if (problems.length > 0) return bad(problems)
  const { g, gSource } = gravityOf(input)
  if (input.lengthMm === undefined) {
    const beat = 3600 / (input.bph ?? 0)
    return good({ bph: input.bph ?? 0, lengthMm: pendulumLengthMm(beat, g), beatSeconds: beat, g, gSource })
  }
  const beat = beatSeconds(input.lengthMm, g)
  return good({ bph: 3600 / beat, lengthMm: input.lengthMm, beatSeconds: beat, g, gSource })
}

function gravityOf({ g, latitude, heightMetres }: PendulumInput): Pick<Pendulum, 'g' | 'gSource'> {
  if (g !== undefined) return { g, gSource: g === standardGravity ? 'standard' : 'given' }
  const gSource = heightMetres === undefined ? 'latitude' : 'latitude and height'
  return { g: gravityAt(latitude ?? 0, heightMetres), gSource }
}

const bounds = {
  bph: { least: 1, most: 100_000 },
  lengthMm: { least: 0.01, most: 1_000_000 },
  g: { least: 1, most: 100 },
  latitude: { least: -90, most: 90 },
  heightMetres: { least: -500, most: 10_000 },
} as const

function pendulumProblems(input: PendulumInput): Problem[] {
  const problems: Problem[] = []
  if ((input.bph === undefined) === (input.lengthMm === undefined))
    problems.push(problem('pendulum.oneOf', 'bph', { one: 'bph', other: 'lengthMm' }))
  if ((input.g === undefined) === (input.latitude === undefined))
    problems.push(problem('pendulum.oneOf', 'g', { one: 'g', other: 'latitude' }))
  if (input.heightMetres !== undefined && input.latitude === undefined)
    problems.push(problem('pendulum.heightAlone', 'heightMetres'))
  for (const field of ['bph', 'lengthMm', 'g', 'latitude', 'heightMetres'] as const) {
    const value = input[field]
    if (value !== undefined) problems.push(...figureProblems(value, field, bounds[field]))
  }
  return problems
}
