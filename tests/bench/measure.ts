/** How long one thing takes, in milliseconds, over many runs once warm. */
export interface Measured {
  readonly runs: number
  readonly medianMs: number
  readonly p95Ms: number
  /** The ceiling it is held to, where there is one, and whether the median keeps it. */
  readonly ceilingMs?: number
  readonly kept?: boolean
}

/** Runs `work` until warm, then `runs` times more. */
export async function measured(work: () => unknown, runs: number, ceilingMs?: number): Promise<Measured> {
  for (let i = 0; i < Math.max(5, runs / 5); i++) await work()
  const times: number[] = []
  for (let i = 0; i < runs; i++) {
    const start = performance.now()
    await work()
    times.push(performance.now() - start)
  }
  times.sort((a, b) => a - b)
  const at = (share: number) => Number((times[Math.min(runs - 1, Math.floor(runs * share))] ?? 0).toFixed(3))
  const result = { runs, medianMs: at(0.5), p95Ms: at(0.95) }
  return ceilingMs === undefined ? result : { ...result, ceilingMs, kept: result.medianMs <= ceilingMs }
}
