/** How long one thing takes, in milliseconds, over many runs once warm. */
export interface Measured {
  readonly runs: number
  readonly medianMs: number
  readonly p95Ms: number
  /** The ceiling it is held to, where there is one, and whether the median keeps it. */
  readonly ceilingMs?: number
  readonly kept?: boolean
}

/** The time below which `share` of the times lie; NaN where there are none. */
export const at = (times: readonly number[], share: number): number =>
  [...times].sort((a, b) => a - b)[Math.min(times.length - 1, Math.floor(times.length * share))] ?? Number.NaN

/** Runs `work` until warm, then `runs` times more. */
export async function measured(work: () => unknown, runs: number, ceilingMs?: number): Promise<Measured> {
  for (let i = 0; i < Math.max(5, runs / 5); i++) await work()
  const times: number[] = []
  for (let i = 0; i < runs; i++) {
    const start = performance.now()
    await work()
    times.push(performance.now() - start)
  }
  const result = { runs, medianMs: rounded(at(times, 0.5)), p95Ms: rounded(at(times, 0.95)) }
  return ceilingMs === undefined ? result : { ...result, ceilingMs, kept: result.medianMs <= ceilingMs }
}

/** Milliseconds to the microsecond. */
export const rounded = (ms: number): number => Number(ms.toFixed(3))
