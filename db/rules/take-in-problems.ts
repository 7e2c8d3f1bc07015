import { and, eq } from 'drizzle-orm'
import { civilDateOf } from '../../core/calendar/zone.ts'
import { gather } from '../../core/checked.ts'
import type { ClaimCheckContents } from '../../core/papers/contents.ts'
import { rangeProblems } from '../../core/pricing/quoted-range.ts'
import type { Problem } from '../../core/problems.ts'
import type { Settings } from '../../core/shop/settings.ts'
import type { Read } from '../file/ledger.ts'
import { currentOwnerId } from '../rows/find-entries.ts'
import { known, refusalsOf, refuse, refuseAny } from '../rows/refusal.ts'
import { clockRow, ownerRow } from '../rows/register-rows.ts'
import { readSettings } from '../rows/settings.ts'
import { owners, repairs } from '../schema/index.ts'
import { accepted, amountIn } from './checked-in.ts'
import { inShop } from './in-shop.ts'
import { type NewClock, type NewOwner, newClockUnseen, newOwnerContacts } from './register-entries.ts'
import type { TakeIn } from './take-in-entry.ts'
import { refuseUncovered } from './warranty-cover.ts'

/** A taking in as far as it could be read: what is missing or unreadable is told elsewhere. */
export type TakeInSaid = Partial<Omit<TakeIn, 'owner' | 'clock'>> & {
  readonly owner?: { readonly id?: number } | Partial<NewOwner>
  readonly clock?: { readonly id?: number } | Partial<NewClock>
}

/** The clock as the owner brings it; refused where it is another's or already stands in the shop. `ownerId` is null for a new owner. */
function refuseElsewhere(read: Read, clockId: number, ownerId: number | null): void {
  const { id } = clockRow(read, clockId, 'clock.id')
  const holder = currentOwnerId(read, id)
  if (holder !== undefined && holder !== ownerId) {
    const name =
      read.select({ name: owners.name }).from(owners).where(eq(owners.id, holder)).get()?.name ?? ''
    refuse('clock.otherOwner', 'clock.id', { owner: name })
  }
  const here = read
    .select({ number: repairs.number })
    .from(repairs)
    .where(and(eq(repairs.clockId, id), inShop))
    .get()
  if (here) refuse('clock.inShop', 'clock.id', { number: here.number })
}

/** The comeback is of this clock, and covered where that was said. */
function refuseComeback(
  read: Read,
  { comebackOf, covered, causes = [] }: TakeInSaid,
  clockId: number | null,
  onDate: string,
): void {
  if (typeof comebackOf !== 'number') return
  const earlier = known(
    read.select().from(repairs).where(eq(repairs.id, comebackOf)).get(),
    'repair.unknown',
    'comebackOf',
  )
  if (earlier.clockId !== clockId) refuse('comeback.otherClock', 'comebackOf', { number: earlier.number })
  if (covered) refuseUncovered(read, earlier, causes, onDate)
}

/** What was said of the cost, as the claim check keeps it; refused where an amount cannot be read or the upper end lies below the lower. */
export function saidOfCost(
  settings: Settings,
  { fee = null, low = null, high = null }: TakeInSaid,
): ClaimCheckContents['estimate'] {
  const said = accepted(
    gather({
      fee: amountIn(settings, fee, 'fee'),
      low: amountIn(settings, low, 'low'),
      high: amountIn(settings, high, 'high'),
    }),
  )
  refuseAny(rangeProblems(said.low, said.high, 'high'))
  return {
    ...(said.fee === null ? {} : { fee: said.fee, feeCredited: true }),
    ...(said.low === null ? {} : { low: said.low }),
    ...(said.high === null ? {} : { high: said.high }),
  }
}

/** The number of an owner or a clock on record; null for a new one. */
const idOf = (one: TakeInSaid['owner' | 'clock']): number | null =>
  one && 'id' in one && one.id !== undefined ? one.id : null

/** Everything that stands against taking the clock in at that instant, all of it together. */
export function takeInProblems(read: Read, said: TakeInSaid, at: string): Problem[] {
  const settings = readSettings(read)
  const { owner = {}, clock = {} } = said
  const [ownerId, clockId] = [idOf(owner), idOf(clock)]
  const newOwner = { name: '', contacts: [], otherThan: [], ...owner }
  const newClock = { maker: '', serial: '', otherThan: [], ...clock }
  return refusalsOf([
    () =>
      ownerId === null
        ? accepted(newOwnerContacts(read, newOwner, 'owner'))
        : ownerRow(read, ownerId, 'owner.id'),
    () =>
      clockId === null
        ? accepted(newClockUnseen(read, newClock, 'clock'))
        : refuseElsewhere(read, clockId, ownerId),
    () => refuseComeback(read, said, clockId, civilDateOf(at, settings.place.timeZone)),
    () => saidOfCost(settings, said),
  ])
}
