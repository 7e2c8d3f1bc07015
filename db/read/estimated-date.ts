import { and, eq, isNull, max } from 'drizzle-orm'
import { localOf } from '../../core/calendar/zone.ts'
import {
  type EstimatedDate,
  type EstimatedDateInput,
  estimatedDate,
} from '../../core/estimated-date/estimated-date.ts'
import { minutesOfHours } from '../../core/labour/hours.ts'
import { bookHours } from '../../core/pricing/price-book.ts'
import type { Settings } from '../../core/shop/settings.ts'
import { isBeforeShelf } from '../../core/standing/stages.ts'
import { type MovementSeen, supposedMovement } from '../../core/vocabulary/clock.ts'
import type { Scope } from '../../core/vocabulary/work.ts'
import type { Read } from '../file/ledger.ts'
import { known } from '../rows/refusal.ts'
import { readSettings } from '../rows/settings.ts'
import type { RepairRow } from '../rules/facts.ts'
import { holidayDates } from '../rules/shop-calendar.ts'
import * as s from '../schema/index.ts'
import { agreedMinutes } from './agreed-hours.ts'
import { activePeople, benchView } from './bench.ts'

/** Work after which a clock is proved on the shelf before it leaves. */
const runsIn: readonly Scope[] = ['overhaul', 'service', 'repair']

/** Bench minutes of the last estimate, agreed or not; null while none is written. */
function estimatedMinutes(read: Read, repairId: number): number | null {
  const last = read
    .select({ id: s.estimates.id })
    .from(s.estimates)
    .where(and(eq(s.estimates.repairId, repairId), eq(s.estimates.supplement, false)))
    .orderBy(s.estimates.version)
    .all()
    .at(-1)
  if (!last) return null
  const lines = read
    .select({ quantity: s.estimateLines.quantity })
    .from(s.estimateLines)
    .where(and(eq(s.estimateLines.estimateId, last.id), eq(s.estimateLines.kind, 'labour')))
    .all()
  return minutesOfHours(lines.map(line => line.quantity))
}

/** The last day on which anything for this repair is due back or due in. */
function dueBack(read: Read, repairId: number): string | null {
  const away = read
    .select({ on: max(s.outsideWork.dueOn) })
    .from(s.outsideWork)
    .where(and(eq(s.outsideWork.repairId, repairId), isNull(s.outsideWork.backAt)))
    .get()
  const ordered = read
    .select({ on: max(s.partOrders.dueOn) })
    .from(s.partOrders)
    .where(and(eq(s.partOrders.repairId, repairId), isNull(s.partOrders.arrivedAt)))
    .get()
  return [away?.on ?? '', ordered?.on ?? ''].sort().at(-1) || null
}

/** Bench minutes agreed for the repairs before this one in the queue; for one not yet in it, of all. */
function minutesAhead(bench: ReturnType<typeof benchView>, repairId: number): number {
  const place = bench.queue.findIndex(row => row.id === repairId)
  const ahead = place < 0 ? bench.queue : bench.queue.slice(0, place)
  return ahead.reduce((sum, row) => sum + row.aheadMinutes, 0)
}

/** The run-in the shop asks of a clock, as far as somebody looked at it. */
function runInAsked(clock: MovementSeen, { runIn }: Settings) {
  const { duration, trains } = supposedMovement(clock)
  return { duration, trains, policy: runIn[duration] }
}

/** What one repair asks of the bench and the shelf. */
interface Asked extends Pick<EstimatedDateInput, 'aheadMinutes' | 'ownMinutes' | 'dueBack'> {
  readonly clock: MovementSeen
  readonly scope: Scope
}

/** The date by the shop's hours, its benches and its run-in; null where they do not reckon. */
function dateOf(read: Read, settings: Settings, { clock, scope, ...minutes }: Asked, at: string) {
  const result = estimatedDate({
    ...minutes,
    week: settings.hours.week,
    holidays: holidayDates(read),
    now: localOf(at, settings.place.timeZone),
    benches: Math.max(1, activePeople(read)),
    runIn: runsIn.includes(scope) ? runInAsked(clock, settings) : null,
  })
  return result.ok ? result.value : null
}

const clockOf = (read: Read, clockId: number) =>
  known(read.select().from(s.clocks).where(eq(s.clocks.id, clockId)).get(), 'clock.unknown', 'clock')

/** The date a repair not yet on the shelf can be estimated ready by, with its parts; null where its hours are not known yet. */
export function suggestedDate(read: Read, repair: RepairRow, at: string): EstimatedDate | null {
  const minutes = agreedMinutes(read, repair.id) ?? estimatedMinutes(read, repair.id)
  if (minutes === null || !isBeforeShelf(repair.stage)) return null
  const bench = benchView(read, at)
  const worked = bench.queue.find(row => row.id === repair.id)?.workedMinutes ?? 0
  const asked = {
    aheadMinutes: minutesAhead(bench, repair.id),
    ownMinutes: Math.max(0, minutes - worked),
    dueBack: dueBack(read, repair.id),
    clock: clockOf(read, repair.clockId),
    scope: repair.scope,
  }
  return dateOf(read, readSettings(read), asked, at)
}

/** A clock that is being taken in: one on record, or what was seen of a new one. */
export interface BeingTakenIn extends MovementSeen {
  readonly clockId: number | null
  readonly scope: Scope
  /** A covered comeback goes to the head of the queue. */
  readonly covered: boolean
}

/** The date a clock being taken in can be estimated ready by, by the hours the price book has for such work; null where it has none. */
export function dateForNew(read: Read, said: BeingTakenIn, at: string): EstimatedDate | null {
  const settings = readSettings(read)
  const { scope, covered, clockId } = said
  const clock = clockId === null ? said : clockOf(read, clockId)
  if (scope === 'none') return null
  const entry = bookHours(settings.prices, scope, clock.form, supposedMovement(clock).trains)
  if (!entry) return null
  const { queue } = benchView(read, at)
  const aheadMinutes = covered ? 0 : queue.reduce((sum, row) => sum + row.aheadMinutes, 0)
  const asked = { aheadMinutes, ownMinutes: minutesOfHours([entry.hours]), dueBack: null, clock, scope }
  return dateOf(read, settings, asked, at)
}
