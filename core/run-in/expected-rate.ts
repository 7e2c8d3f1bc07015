/**
 * What may be expected of a clock at hand-over: a criterion, not a promise. Seconds a day; sources are those of
 * docs/sources.md.
 */
export interface ExpectedRate {
  readonly secondsPerDay: number
  readonly source: string
}

const perWeek = (minutes: number): number => (minutes * 60) / 7

/** Figures to begin with; each shop may set its own. */
export const expectedRates = {
  torsion: { secondsPerDay: perWeek(5), source: 'GO: 5 min a week is close' },
  recoil: { secondsPerDay: perWeek(5), source: 'GO: 8-day spring clock, poor recoil, 5 min a week' },
  mantel: { secondsPerDay: perWeek(4), source: 'common practice: within 4 min a week' },
  cuckoo: { secondsPerDay: perWeek(3), source: 'common practice: 1 to 3 min a week' },
  antique: { secondsPerDay: perWeek(1), source: 'common practice: 1 min a week in good order' },
  pendulum: { secondsPerDay: 60 / 30, source: 'GO: well-made pendulum, 1 min a month' },
  lantern: { secondsPerDay: 15 * 60, source: 'common practice: 10 to 15 min a day' },
} as const satisfies Record<string, ExpectedRate>
