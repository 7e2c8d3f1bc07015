import { median } from './median.ts'

/** The median slope over all pairs of points with different x (Theil 1950, Sen 1968). NaN when there is no such pair. */
export const theilSen = (x: readonly number[], y: readonly number[]): number =>
  median(slopes(Float64Array.from(x), Float64Array.from(y)))

/** Every slope, once. Typed arrays keep a million of them to a few milliseconds. */
function slopes(x: Float64Array, y: Float64Array): Float64Array {
  const all = new Float64Array((x.length * (x.length - 1)) / 2)
  let count = 0
  for (let i = 1; i < x.length; i++) {
    const [xi, yi] = [x[i] as number, y[i] as number]
    for (let j = 0; j < i; j++) {
      const run = xi - (x[j] as number)
      if (run !== 0) all[count++] = (yi - (y[j] as number)) / run
    }
  }
  return all.subarray(0, count)
}
