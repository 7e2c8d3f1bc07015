import { and, eq, ne, sql } from 'drizzle-orm'
import { type Minor, minor, minorText } from '../../core/money/minor.ts'
import type { WriteOffCause, WriteOffKind } from '../../core/vocabulary/work.ts'
import type { Write } from '../file/ledger.ts'
import { refuse } from '../rows/refusal.ts'
import { readSettings } from '../rows/settings.ts'
import { type Doing, verb } from '../rows/verb.ts'
import { repairBalance } from '../rules/balance.ts'
import { bookDay } from '../rules/book-day.ts'
import { accepted, amountIn } from '../rules/checked-in.ts'
import { type RepairRow, repairRow } from '../rules/facts.ts'
import { settleMoney } from '../rules/settled-taxes.ts'
import { writeOffs } from '../schema/index.ts'

/** A rest that is given up. */
export interface WriteOff {
  readonly repairId: number
  /** In major units. */
  readonly amount: string
  readonly cause: WriteOffCause
  readonly reason: string
  /** The day it is given up; the day it is entered where null. */
  readonly onDate: string | null
}

interface Entry {
  readonly onDate: string
  readonly kind: WriteOffKind
  readonly amountMinor: Minor
  readonly reason: string
}

const enter = (tx: Write, doing: Doing, repair: RepairRow, entry: Entry): number =>
  tx
    .insert(writeOffs)
    .values({
      at: doing.at,
      personId: doing.personId,
      ownerId: repair.ownerId,
      repairId: repair.id,
      ...entry,
    })
    .returning()
    .get().id

/** Gives up what is still owed on a repair, or a part of it: a record of its own, the invoice stays as it is. */
export const writeOff = verb('accounts.writeOff', (tx, input: WriteOff, doing) => {
  const settings = readSettings(tx)
  const repair = repairRow(tx, input.repairId)
  const onDate = bookDay(tx, settings, doing, input.onDate)
  const amountMinor = accepted(amountIn(settings, input.amount, 'amount')) ?? minor(0)
  if (amountMinor === 0) refuse('payment.zero', 'amount')
  const { due } = repairBalance(tx, repair.id)
  if (amountMinor > due)
    refuse('writeOff.moreThanOwed', 'amount', {
      due: minorText(minor(Math.max(due, 0)), settings.place.currency),
    })
  const { cause: kind, reason } = input
  const id = enter(tx, doing, repair, { onDate, kind, amountMinor, reason })
  settleMoney(tx, repair.id, doing.at)
  return { subject: { kind: 'write-off', id }, result: { id, dueMinor: minor(due - amountMinor) } }
})

/** Takes back all that was written off on a repair, so that it is owed again, as when the owner pays after all. */
export const takeBackWriteOff = verb(
  'accounts.takeBackWriteOff',
  (tx, input: { repairId: number; reason: string; onDate: string | null }, doing) => {
    const settings = readSettings(tx)
    const repair = repairRow(tx, input.repairId)
    const onDate = bookDay(tx, settings, doing, input.onDate)
    const given = tx
      .select({ kind: writeOffs.kind, sum: sql<Minor>`sum(${writeOffs.amountMinor})` })
      .from(writeOffs)
      .where(and(eq(writeOffs.repairId, repair.id), ne(writeOffs.kind, 'rounding')))
      .groupBy(writeOffs.kind)
      .having(sql`sum(${writeOffs.amountMinor}) <> 0`)
      .all()
    const ids = given.map(({ kind, sum }) =>
      enter(tx, doing, repair, { onDate, kind, amountMinor: minor(-sum), reason: input.reason }),
    )
    const id = ids.at(-1) ?? refuse('writeOff.none', 'repairId')
    settleMoney(tx, repair.id, doing.at)
    return { subject: { kind: 'write-off', id }, result: { id, dueMinor: repairBalance(tx, repair.id).due } }
  },
)
