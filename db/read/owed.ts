import { asc, eq, sql } from 'drizzle-orm'
import { daysBetween } from '../../core/calendar/civil.ts'
import { minor } from '../../core/money/minor.ts'
import type { Read } from '../file/ledger.ts'
import { accountHeld, repairBalance } from '../rules/balance.ts'
import * as s from '../schema/index.ts'

/** The owner a duplicate was merged into at last, or the owner itself. */
const survivors = sql`(
  WITH RECURSIVE into_(id, next) AS (
    SELECT id, merged_into_id FROM owners WHERE id IN (SELECT owner_id FROM payments WHERE method = 'account' OR repair_id IS NULL)
    UNION SELECT o.id, o.merged_into_id FROM owners o JOIN into_ ON o.id = into_.next)
  SELECT id FROM into_ WHERE next IS NULL)`

/** Owners’ accounts with something on them, by name. */
const accountsHeld = (read: Read) =>
  read
    .select({ id: s.owners.id, name: s.owners.name })
    .from(s.owners)
    .where(sql`${s.owners.id} IN ${survivors}`)
    .orderBy(asc(s.owners.name), asc(s.owners.id))
    .all()
    .map(owner => ({ owner, heldMinor: accountHeld(read, owner.id) }))
    .filter(({ heldMinor }) => heldMinor !== 0)

/** What is owed on `today`: every repair whose invoices and payments do not cancel out, the longest owed first; and what is held on owners’ accounts. */
export function owedView(read: Read, today: string) {
  const rows = read
    .select({
      repairId: s.repairs.id,
      number: s.repairs.number,
      owner: { id: s.owners.id, name: s.owners.name },
      billed: sql<
        string | null
      >`(SELECT min(d.issued_on) FROM documents d WHERE d.repair_id = repairs.id AND d.kind = 'invoice')`,
      paid: sql<string | null>`(SELECT min(p.on_date) FROM payments p WHERE p.repair_id = repairs.id)`,
    })
    .from(s.repairs)
    .innerJoin(s.owners, eq(s.owners.id, s.repairs.ownerId))
    .where(sql`${s.repairs.dueMinor} <> 0`)
    .all()
    .map(({ billed, paid, ...row }) => {
      const sinceOn = billed ?? paid ?? today
      const { due, ...sums } = repairBalance(read, row.repairId)
      return {
        ...row,
        billedMinor: sums.billed,
        paidMinor: sums.paid,
        writtenOffMinor: minor(sums.writtenOff + sums.rounded),
        dueMinor: due,
        sinceOn,
        days: daysBetween(sinceOn, today),
      }
    })
    .sort((a, b) => b.days - a.days || a.repairId - b.repairId)
  const accounts = accountsHeld(read)
  const sum = (sums: readonly number[]) => minor(sums.reduce((total, one) => total + one, 0))
  return {
    rows,
    accounts,
    dueMinor: sum(rows.map(row => row.dueMinor)),
    owedMinor: sum(rows.map(row => Math.max(row.dueMinor, 0))),
    heldMinor: sum([...rows.map(row => Math.max(-row.dueMinor, 0)), ...accounts.map(row => row.heldMinor)]),
  }
}
