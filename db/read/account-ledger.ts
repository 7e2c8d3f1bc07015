import { type SQL, sql } from 'drizzle-orm'
import type { AccountName } from '../../core/accounts/names.ts'
import type { Period } from '../../core/calendar/period.ts'
import { type Minor, minor } from '../../core/money/minor.ts'
import type { Read } from '../file/ledger.ts'

const bills = (amount: SQL) => sql`
  SELECT issued_on AS "on", issued_at AS at, kind AS entry, ${amount} AS amount, owner_id, repair_id, id AS document_id, '' AS remark
  FROM documents WHERE kind IN ('invoice', 'credit-note')`

const money = (amount: SQL, where: SQL) => sql`
  SELECT on_date AS "on", at, 'payment' AS entry, ${amount} AS amount, owner_id, repair_id, receipt_id AS document_id, reference AS remark
  FROM payments WHERE ${where}`

const givenUp = (amount: SQL, where: SQL) => sql`
  SELECT on_date AS "on", at, 'write-off' AS entry, ${amount} AS amount, owner_id, repair_id, NULL AS document_id, reason AS remark
  FROM write_offs WHERE ${where}`

const counts = (amount: SQL) => sql`
  SELECT on_date AS "on", at, 'count' AS entry, ${amount} AS amount, NULL AS owner_id, NULL AS repair_id, NULL AS document_id, remark
  FROM drawer_counts WHERE ${amount} <> 0`

const by = (method: SQL) => money(sql`amount_minor`, sql`method = ${method}`)

/** What is entered on each account; sums above nothing are what is owed to the shop, lies in it, was earned, owed on or given up. */
const entriesOf: Readonly<Record<AccountName, readonly SQL[]>> = {
  owed: [
    bills(sql`total_minor`),
    money(sql`-amount_minor`, sql`repair_id IS NOT NULL`),
    givenUp(sql`-amount_minor`, sql`repair_id IS NOT NULL`),
  ],
  held: [
    money(sql`-amount_minor`, sql`method = 'account'`),
    money(sql`amount_minor`, sql`repair_id IS NULL`),
    givenUp(sql`amount_minor`, sql`repair_id IS NULL`),
  ],
  cash: [by(sql`'cash'`), counts(sql`(counted_minor - expected_minor - taken_minor)`)],
  card: [by(sql`'card'`)],
  transfer: [by(sql`'transfer'`)],
  cheque: [by(sql`'cheque'`)],
  income: [bills(sql`total_minor - tax_minor`)],
  tax: [bills(sql`tax_minor`)],
  writtenOff: [givenUp(sql`amount_minor`, sql`kind <> 'rounding'`)],
  rounding: [givenUp(sql`amount_minor`, sql`kind = 'rounding'`)],
  drawer: [counts(sql`(expected_minor - counted_minor)`)],
  taken: [counts(sql`taken_minor`)],
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

/** Each sort of entry is summed by itself, from an index alone: together they would be gathered row by row first. */
function summed(read: Read, entries: readonly SQL[], when: SQL): Minor {
  const sums = entries.map(part => sql`(SELECT ifnull(sum(amount), 0) FROM (${part}) WHERE ${when})`)
  return minor(read.get<{ sum: number }>(sql`SELECT ${sql.join(sums, sql` + `)} AS sum`).sum)
}

/** One account between two days, both included: what stood on it before, and every entry with the balance after it; those in which `search` is found where it is not empty. */
export function accountView(read: Read, account: AccountName, { from, to }: Period, search: string) {
  const entries = entriesOf[account]
  const together = sql.join([...entries], sql` UNION ALL `)
  const within = sql`"on" BETWEEN ${from} AND ${to}`
  const before = summed(read, entries, sql`"on" < ${from}`)
  const rows = read.all<EntryRow>(sql`
    SELECT line, "on", entry, amount AS amountMinor, balance + ${before} AS balanceMinor, e.owner_id AS ownerId, o.name AS owner,
      r.number AS repairNumber, d.id AS paperId, d.number AS paperNumber, remark
    FROM (SELECT *, row_number() OVER w AS line, sum(amount) OVER w AS balance FROM (${together})
      WHERE ${within} WINDOW w AS (ORDER BY "on", at ROWS UNBOUNDED PRECEDING)) e
    LEFT JOIN owners o ON o.id = e.owner_id LEFT JOIN repairs r ON r.id = e.repair_id LEFT JOIN documents d ON d.id = e.document_id
    WHERE ${search} = '' OR concat_ws(' ', o.name, d.number, r.number, remark) LIKE ${anywhere(search)} ESCAPE '\\'
    ORDER BY line LIMIT ${mostLines + 1}`)
  return {
    account,
    from,
    to,
    search,
    beforeMinor: before,
    afterMinor: minor(before + summed(read, entries, within)),
    rows: rows.slice(0, mostLines),
    more: rows.length > mostLines,
  }
}
