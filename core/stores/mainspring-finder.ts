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
  /** The spring that was in it, where it was measured: the new one is to be as strong. */
  readonly old?: SpringSize | undefined
}

/** Height, thickness and length of a spring in millimetres. */
export interface SpringSize {
  readonly height: number
  readonly thickness: number
  readonly length: number
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
  /** How strong it is against the old one, in percent; null where that was not measured. */
  readonly strengthPercent: number | null
  /** Whether it is on record for this very barrel. */
  readonly ofThisBarrel: boolean
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
  const { old } = wanted
  if (old)
    for (const key of ['height', 'thickness', 'length'] as const)
      problems.push(...figureProblems(old[key], `old.${key}`, size))
  return problems
}

/** The force of a spring against another of the same material: height × thickness³ ÷ length (bending of a strip: common practice). */
const strength = ({ height, thickness, length }: SpringSize): number => (height * thickness ** 3) / length

/** A fill that far from half the room is unusual (common practice: 40 to 60 %). */
const usualFill = { least: 40, most: 60 } as const
/** A run so much shorter than wanted is said, and does not put a spring behind a wrong one. */
const littleShortDays = 0.5
/** Sizes of barrels are told to about half a millimetre. */
const sameBarrelMm = 0.5

/**
 * The springs that go into the barrel, the best first: of this very barrel, of a usual fill, at most half a day short, as strong as the old one, then by how near
 * they fill half the room. Turns follow from the spring's own length and thickness: coils round the arbor less coils at the wall. Problems: figures
 * out of 0.001 to 10000, `mainspring.arbor`.
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
  return good(found.sort((a, b) => compared(rankOf(a, wanted), rankOf(b, wanted))))
}

/** What a spring is ranked by, the first thing first; less is better. */
const rankOf = (found: Omit<SpringFound<unknown>, 'part'>, { wantedDays }: SpringWanted): number[] => [
  Number(!found.ofThisBarrel),
  Number(found.fillPercent < usualFill.least || found.fillPercent > usualFill.most),
  Number(wantedDays - found.days > littleShortDays),
  found.strengthPercent === null ? 0 : Math.abs(Math.log(found.strengthPercent / 100)),
  Math.abs(found.fillPercent - 50),
]

const compared = (a: readonly number[], b: readonly number[]): number =>
  a.map((value, i) => value - (b[i] ?? 0)).find(difference => difference !== 0) ?? 0

function fitted(
  { barrelMm: D, arborMm: d, heightMm, hoursPerTurn, wantedDays, old }: SpringWanted,
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
  const barrel = sizeMm(sizes, 'barrel')
  return {
    turns,
    fillPercent: (area / room) * 100,
    days,
    longEnough: days >= wantedDays,
    strengthPercent: old ? (strength({ height, thickness: t, length }) / strength(old)) * 100 : null,
    ofThisBarrel: barrel !== undefined && Math.abs(barrel - D) <= sameBarrelMm,
  }
}
