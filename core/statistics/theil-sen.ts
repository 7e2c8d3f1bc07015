import { medianAfter } from './median.ts'

/** Up to so many points every slope is simply listed. */
const fewPoints = 300

/**
 * The median slope over all pairs of points with different x (Theil 1950, Sen 1968), exact. NaN when there is no
 * such pair. A year of readings makes a million pairs: there a sample first brackets the median, so that only the
 * slopes near it have to be put in order.
 */
export function theilSen(x: readonly number[], y: readonly number[]): number {
  const points = { x: Float64Array.from(x), y: Float64Array.from(y) }
  const slope = x.length > fewPoints ? medianWithin(points, bracket(points), 4) : Number.NaN
  return Number.isNaN(slope) ? medianWithin(points, everything, 1) : slope
}

interface Points {
  readonly x: Float64Array
  readonly y: Float64Array
}

interface Bracket {
  readonly low: number
  readonly high: number
}

const everything: Bracket = { low: Number.NEGATIVE_INFINITY, high: Number.POSITIVE_INFINITY }

/**
 * The median slope, or NaN when it does not lie in the bracket or more than one slope in `roomForOneIn` does. Counted
 * without branches: which way a slope falls cannot be foretold.
 */
function medianWithin({ x, y }: Points, { low, high }: Bracket, roomForOneIn: number): number {
  const within = new Float64Array(Math.ceil((x.length * (x.length - 1)) / 2 / roomForOneIn))
  let [count, below, kept] = [0, 0, 0]
  for (let i = 1; i < x.length; i++) {
    const [xi, yi] = [x[i] as number, y[i] as number]
    for (let j = 0; j < i; j++) {
      const run = xi - (x[j] as number)
      const slope = (yi - (y[j] as number)) / run
      count += Number(run !== 0)
      below += Number(run !== 0 && slope < low)
      within[kept] = slope
      kept += Number(run !== 0 && slope >= low && slope <= high)
    }
  }
  if (kept > within.length) return Number.NaN
  return medianAfter(within.subarray(0, kept), below, count)
}

const sampleSize = 2000

/** The 45th and 55th percentile of a sample of the slopes: very likely the median lies between them. */
function bracket({ x, y }: Points): Bracket {
  const sample = new Float64Array(sampleSize)
  let draw = 1
  const next = () => {
    // Lehmer's generator with the multiplier of Park and Miller (CACM 36(7), 1993): a fixed sequence.
    draw = (draw * 48_271) % 2_147_483_647
    return draw % x.length
  }
  for (let k = 0; k < sampleSize; k++) {
    const [i, j] = [next(), next()]
    sample[k] = ((y[i] as number) - (y[j] as number)) / ((x[i] as number) - (x[j] as number))
  }
  const slopes = sample.filter(Number.isFinite).sort()
  const at = (share: number) => slopes[Math.floor(slopes.length * share)] ?? Number.NaN
  return { low: at(0.45), high: at(0.55) }
}
