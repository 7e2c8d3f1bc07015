import { addWorkMinutes, workCalendar } from '../../core/calendar/work.ts'
import { type PriceInput, priced } from '../../core/pricing/price.ts'
import { runInDefaults } from '../../core/run-in/policy.ts'
import type { VerdictInput } from '../../core/run-in/to-show.ts'
import { shelfVerdict } from '../../core/run-in/verdict.ts'
import { must } from '../core/must.ts'
import { type Measured, measured } from './measure.ts'

const document: PriceInput = {
  currency: 'EUR',
  tax: { basis: 'group', mode: 'half-up', inclusive: false },
  lines: Array.from({ length: 1000 }, (_, i) => ({
    kind: 'part',
    quantity: `${(i % 7) + 1}.25`,
    unit: `${i}.995`,
    unitDiscount: '0.1',
    taxes: [{ code: 'S', rate: `${5 + (i % 3)}.5` }],
  })),
}

const inclusive: PriceInput = { ...document, tax: { ...document.tax, inclusive: true } }

const log: VerdictInput = {
  clock: {
    durationDays: 8,
    sprung: true,
    isWound: true,
    strike: 'hours-half',
    countWheel: false,
    chime: false,
    chimeCorrects: false,
    setInBeat: true,
  },
  policy: runInDefaults['8-day'].policy,
  limits: { perDay: 10, steady: 10 },
  readings: Array.from({ length: 4 * 365 }, (_, i) => ({
    at: new Date(Date.UTC(2026, 0, 1) + i * 6 * 3_600_000).toISOString(),
    errorSeconds: (5 * i) / 4 + 3 * Math.sin(i * 12.9),
    wound: i % 28 === 0,
    hour: { shown: (i % 12) + 1, counted: (i % 12) + 1 },
  })),
  now: '2027-01-01T00:00:00.000Z',
}

const calendar = must(
  workCalendar({
    week: [1, 2, 3, 4, 5].flatMap(day => [
      { day, from: '09:00', to: '12:30' },
      { day, from: '13:00', to: '17:00' },
    ]),
    holidays: Array.from({ length: 10 }, (_, year) => `${2026 + year}-12-25`),
  }),
)

/** Open minutes of ten years of such weeks. */
const tenYears = 10 * 52 * 5 * 450

/** The sums, each held to its ceiling. */
export const core = async (): Promise<Readonly<Record<string, Measured>>> => ({
  'price a document of 1000 lines': await measured(() => must(priced(document)), 60, 20),
  'price a document of 1000 lines, tax included': await measured(() => must(priced(inclusive)), 60, 20),
  'judge a year of 4 readings a day': await measured(() => shelfVerdict(log), 60, 20),
  'add ten years of work time': await measured(
    () => must(addWorkMinutes(calendar, '2026-01-01T09:00', tenYears)),
    60,
    5,
  ),
})
