import { type SQL, sql } from 'drizzle-orm'
import type { AccountName } from '../../core/accounts/names.ts'
import type { Period } from '../../core/calendar/period.ts'
import { type Minor, minor } from '../../core/money/minor.ts'
import type { Read } from '../ledger.ts'

const bills = (amount: SQL) => sql`
  SELECT issued_on AS "on", issued_at AS at, kind AS entry, ${amount} AS amount, owner_id, repair_id, id AS document_id, '' AS remark
  FROM documents WHERE kind IN ('invoice', 'credit-note')`

const money = (amount: SQL, where: SQL) => sql`
  SELECT on_date, at, 'payment', ${amount}, owner_id, repair_id, receipt_id, reference FROM payments WHERE ${where}`

const givenUp = (amount: SQL, where: SQL) => sql`
  SELECT on_date, at, 'write-off', ${amount}, owner_id, repair_id, NULL, reason FROM write_offs WHERE ${where}`

const counts = (amount: SQL) => sql`
  SELECT on_date, at, 'count', ${amount}, NULL, NULL, NULL, remark FROM drawer_counts WHERE ${amount} <> 0`

/** Where there are no bills: nothing, with the names of the columns. */
const none = sql`${bills(sql`0`)} AND 0`
const together = (...parts: SQL[]) => sql.join(parts, sql` UNION ALL `)
const by = (method: SQL) => money(sql`amount_minor`, sql`method = ${method}`)

/** The entries of each account; sums above nothing are what is owed to the shop, lies in it, was earned, owed on or given up. */
const entriesOf: Readonly<Record<AccountName, SQL>> = {
  owed: together(
    bills(sql`total_minor`),
    money(sql`-amount_minor`, sql`repair_id IS NOT NULL`),
    givenUp(sql`-amount_minor`, sql`repair_id IS NOT NULL`),
  ),
  held: together(
    none,
    money(sql`-amount_minor`, sql`method = 'account'`),
    money(sql`amount_minor`, sql`repair_id IS NULL`),
    givenUp(sql`amount_minor`, sql`repair_id IS NULL`),
  ),
  cash: together(none, by(sql`'cash'`), counts(sql`(counted_minor - expected_minor - taken_minor)`)),
  card: together(none, by(sql`'card'`)),
  transfer: together(none, by(sql`'transfer'`)),
  cheque: together(none, by(sql`'cheque'`)),
  income: bills(sql`total_minor - tax_minor`),
  tax: bills(sql`tax_minor`),
  writtenOff: together(none, givenUp(sql`amount_minor`, sql`kind <> 'rounding'`)),
  rounding: together(none, givenUp(sql`amount_minor`, sql`kind = 'rounding'`)),
  drawer: together(none, counts(sql`(expected_minor - counted_minor)`)),
  taken: together(none, counts(sql`taken_minor`)),
}

interface EntryRow {
  readonly line: number
  readonly on: string
  readonly entry: 'invoice' | 'credit-note' | 'payment' | 'write-off' | 'count'
  readonly amountMinor: Minor
  readonly balanceMinor: Minor
  readonly ownerId: number | null
  readonly owner: string | null
  readonly repairNumber: number | null
  readonly paperId: number | null
  readonly paperNumber: string | null
  readonly remark: string
}

/** As many lines as one page shows; a shorter period or a search shows the others. */
const mostLines = 500

/** A text to be found anywhere, its own signs meaning nothing. */
const anywhere = (text: string): string => `%${text.replace(/[\\%_]/g, '\\$&')}%`

const sumBefore = (read: Read, entries: SQL, from: string): Minor =>
  minor(
    read.get<{ sum: number }>(
      sql`SELECT ifnull(sum(amount), 0) AS sum FROM (${entries}) WHERE "on" < ${from}`,
    ).sum,
  )

/** One account between two days, both included: what stood on it before, and every entry with the balance after it; those in which `search` is found where it is not empty. */
export function accountView(read: Read, account: AccountName, { from, to }: Period, search: string) {
  const entries = entriesOf[account]
  const before = sumBefore(read, entries, from)
  const rows = read.all<EntryRow>(sql`
    SELECT line, "on", entry, amount AS amountMinor, balance + ${before} AS balanceMinor, e.owner_id AS ownerId, o.name AS owner,
      r.number AS repairNumber, d.id AS paperId, d.number AS paperNumber, remark
    FROM (SELECT *, row_number() OVER w AS line, sum(amount) OVER w AS balance FROM (${entries})
      WHERE "on" BETWEEN ${from} AND ${to} WINDOW w AS (ORDER BY "on", at ROWS UNBOUNDED PRECEDING)) e
    LEFT JOIN owners o ON o.id = e.owner_id LEFT JOIN repairs r ON r.id = e.repair_id LEFT JOIN documents d ON d.id = e.document_id
    WHERE ${search} = '' OR concat_ws(' ', o.name, d.number, r.number, remark) LIKE ${anywhere(search)} ESCAPE '\\'
    ORDER BY line LIMIT ${mostLines + 1}`)
  return {
    account,
    from,
    to,
    search,
    beforeMinor: before,
    afterMinor: sumBefore(read, entries, `${to}~`),
    rows: rows.slice(0, mostLines),
    more: rows.length > mostLines,
  }
}
