import { figureProblems } from '../horology/figures.ts'
import { mmOf } from '../measures/measures.ts'
import { type Checked, good, type Problem, problem } from '../problems.ts'
import type { Dimension, PartSize } from './part-size.ts'

/** The barrel a spring must go into, in millimetres, and the run that is wanted. */
export interface SpringWanted {
  readonly barrelMm: number
  readonly arborMm: number
  /** The greatest height there is room for. */
  readonly heightMm: number
  /** Hours of going for one turn of the barrel. */
  readonly hoursPerTurn: number
  readonly wantedDays: number
}

/** A spring on record that goes into the barrel. */
export interface SpringFound<P> {
  readonly part: P
  /** Turns of the arbor from run down to fully wound. */
  readonly turns: number
  /** How much of the room between wall and arbor it fills, in percent; 50 is the half-area rule. */
  readonly fillPercent: number
  readonly days: number
  readonly longEnough: boolean
}

/** A dimension of a part in millimetres, or undefined where it is not on record. */
export function sizeMm(sizes: readonly PartSize[], dimension: Dimension): number | undefined {
  const size = sizes.find(one => one.dimension === dimension)
  return size && mmOf(Number(size.value), size.unit)
}

const size = { least: 0.001, most: 10_000 }

function wantedProblems(wanted: SpringWanted): Problem[] {
  const problems = (['barrelMm', 'arborMm', 'heightMm', 'hoursPerTurn', 'wantedDays'] as const).flatMap(key =>
    figureProblems(wanted[key], key, size),
  )
  if (problems.length === 0 && wanted.arborMm >= wanted.barrelMm)
    problems.push(problem('mainspring.arbor', 'arborMm'))
  return problems
}

/**
 * The springs that go into the barrel, those that run long enough first, then by how near they fill half the room. Turns follow from the
 * spring's own length and thickness: coils round the arbor less coils at the wall. Problems: figures out of 0.001 to 10000, `mainspring.arbor`.
 */
export function springsFor<P extends { readonly sizes: readonly PartSize[] }>(
  wanted: SpringWanted,
  parts: readonly P[],
): Checked<SpringFound<P>[]> {
  const problems = wantedProblems(wanted)
  if (problems.length > 0) return { ok: false, problems }
  const found = parts.flatMap(part => {
    const spring = fitted(wanted, part.sizes)
    return spring ? [{ part, ...spring }] : []
  })
  const fromHalf = (fill: number) => Math.abs(fill - 50)
  return good(
    found.sort(
      (a, b) =>
        Number(b.longEnough) - Number(a.longEnough) || fromHalf(a.fillPercent) - fromHalf(b.fillPercent),
    ),
  )
}

function fitted(
  { barrelMm: D, arborMm: d, heightMm, hoursPerTurn, wantedDays }: SpringWanted,
  sizes: readonly PartSize[],
) {
  const [height, t, length] = [sizeMm(sizes, 'height'), sizeMm(sizes, 'thickness'), sizeMm(sizes, 'length')]
  if (height === undefined || t === undefined || length === undefined) return undefined
  const room = (Math.PI * (D * D - d * d)) / 4
  const area = length * t
  if (height > heightMm || area >= room) return undefined
  const coils = (4 * area) / Math.PI
  const wound = (Math.sqrt(d * d + coils) - d) / (2 * t)
  const down = (D - Math.sqrt(D * D - coils)) / (2 * t)
  const turns = wound - down
  if (turns <= 0) return undefined
  const days = (turns * hoursPerTurn) / 24
  return { turns, fillPercent: (area / room) * 100, days, longEnough: days >= wantedDays }
}
