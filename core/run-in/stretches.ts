import { dayMs } from '../calendar/units.ts'
import { farOffAtEnd, type RobustLine, robustLine } from '../rate/line.ts'
import { leftOn, msOf, opensStretch, type ShelfReading } from './shelf-reading.ts'

/** How the hands stood at an instant. */
export interface HandsAt {
  readonly ms: number
  readonly seconds: number
}

/** A stretch of free running between interventions, from how the hands were left to how they were found at the next. */
export interface Stretch {
  readonly points: readonly HandsAt[]
  /** Turns given to the nut at its beginning; 0 for none. */
  readonly turns: number
  /** Null with fewer than two points. */
  readonly line: RobustLine | null
}

/** The stretches of a log, which is in order of time; without a curve told in seconds at each instant where there is one. */
export function stretchesOf(
  readings: readonly ShelfReading[],
  curve: (ms: number) => number = () => 0,
): Stretch[] {
  const begun: Begun[] = []
  for (const reading of readings) {
    const ms = msOf(reading)
    const found = reading.stopped ? undefined : reading.errorSeconds
    if (found !== undefined) begun.at(-1)?.points.push({ ms, seconds: found })
    if (begun.length > 0 && !opensStretch(reading)) continue
    const left = leftOn(reading)
    const points = left === undefined ? [] : [{ ms, seconds: left }]
    begun.push({ points, turns: reading.nutTurns ?? 0, isShared: left !== undefined && left === found })
  }
  begun.forEach((next, i) => {
    dropSharedSlip(begun[i - 1], next)
  })
  return begun.map(({ points, turns }) => {
    const straight = points.map(({ ms, seconds }) => ({ ms, seconds: seconds - curve(ms) }))
    return { points: straight, turns, line: lineOf(straight) }
  })
}

interface Begun {
  readonly points: HandsAt[]
  readonly turns: number
  /** Whether its first point is the last one of the stretch before: the hands were not set. */
  readonly isShared: boolean
}

/** Both lines miss a slip by as much; where they differ by more than this share of it, the clock itself has jumped (our own choice). */
const alike = 0.2

/** A reading between two stretches that lies as far off both lines is a slip, for no clock jumps away and back: it tells nothing of either. */
function dropSharedSlip(before: Begun | undefined, next: Begun): void {
  if (!before || !next.isShared) return
  const [off, offNext] = [farOff(before.points, 'last'), farOff(next.points, 'first')]
  if (off === null || offNext === null || Math.abs(off - offNext) > alike * Math.abs(off)) return
  before.points.pop()
  next.points.shift()
}

const farOff = (points: readonly HandsAt[], end: 'first' | 'last'): number | null =>
  farOffAtEnd(
    points.map(({ ms }) => ms / dayMs),
    points.map(({ seconds }) => seconds),
    end,
  )

function lineOf(points: readonly HandsAt[]): RobustLine | null {
  const first = points[0]?.ms
  if (first === undefined || points.at(-1)?.ms === first) return null
  return robustLine(
    points.map(({ ms }) => (ms - first) / dayMs),
    points.map(({ seconds }) => seconds),
  )
}

/** Days from the first point to the last. */
export const stretchDays = ({ points }: Stretch): number =>
  ((points.at(-1)?.ms ?? 0) - (points[0]?.ms ?? 0)) / dayMs

/** Scatter about the lines of all stretches together, in seconds: √(Σ squares ÷ Σ freedom); null where it is not known yet. */
export function scatterOf(stretches: readonly Stretch[]): number | null {
  const lines = stretches.flatMap(({ line }) => (line ? [line] : []))
  const freedom = lines.reduce((sum, line) => sum + line.freedom, 0)
  const squares = lines.reduce((sum, line) => sum + line.squares, 0)
  return freedom > 0 ? Math.sqrt(squares / freedom) : null
}
