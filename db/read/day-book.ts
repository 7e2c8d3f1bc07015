import { and, asc, eq, gte, like, lte, type SQL, sql } from 'drizzle-orm'
import { dayBegins, dayEnds, localOf } from '../../core/calendar/zone.ts'
import type { Minor } from '../../core/money/minor.ts'
import type { HomeKind, PaperKind } from '../../core/papers/kinds.ts'
import { handOutAct } from '../../core/papers/kinds.ts'
import type { Form } from '../../core/vocabulary/clock.ts'
import type { Read } from '../file/ledger.ts'
import { redactions } from '../rows/redactions.ts'
import type { Subject } from '../rows/verb.ts'
import * as s from '../schema/index.ts'
import { type Turn, turned } from './turn.ts'

interface DayBookRow {
  readonly id: number
  readonly at: string
  readonly act: string
  readonly person: string | null
  readonly subjectKind: Subject['kind']
  readonly subjectId: number
  /** What was entered; null where it was taken out. */
  readonly input: string | null
  readonly repairNumber: number | null
  readonly paperId: number | null
  readonly paperKind: PaperKind | null
  readonly paperNumber: string | null
  /** Which working paper was handed out; it is drawn of the subject. */
  readonly handedKind: HomeKind | null
  readonly ownerId: number | null
  readonly ownerName: string | null
  readonly clockId: number | null
  readonly form: Form | null
  readonly thing: string | null
  /** What a paper, a write-off or a count of the drawer comes to; null on everything else. */
  readonly amountMinor: Minor | null
}

const dayBookRows = (read: Read, where: SQL | undefined, orderBy: SQL, limit: number) =>
  read.all<DayBookRow>(sql`
    SELECT day_book.id, day_book.at, day_book.act, actor.name AS person,
      day_book.subject_kind AS subjectKind, day_book.subject_id AS subjectId, day_book.input,
      coalesce(r.number, dr.number) AS repairNumber,
      d.id AS paperId, d.kind AS paperKind, d.number AS paperNumber,
      CASE day_book.act WHEN ${handOutAct} THEN day_book.input ->> 'kind' END AS handedKind,
      coalesce(o.id, ro.id) AS ownerId, coalesce(o.name, ro.name) AS ownerName,
      c.id AS clockId, c.form AS form, coalesce(p.name, parts.name, vendors.name, closed.to_date) AS thing,
      CASE WHEN day_book.act = ${handOutAct} THEN NULL WHEN d.kind NOT IN ('claim-check', 'warranty') THEN d.total_minor
        WHEN w.id IS NOT NULL THEN w.amount_minor WHEN drawer.id IS NOT NULL THEN drawer.counted_minor
        WHEN e.id IS NOT NULL THEN e.total_minor END AS amountMinor
    FROM day_book
    LEFT JOIN people actor ON actor.id = day_book.person_id
    LEFT JOIN estimates e ON day_book.subject_kind = 'estimate' AND e.id = day_book.subject_id
    LEFT JOIN run_in_runs run ON day_book.subject_kind = 'run-in' AND run.id = day_book.subject_id
    LEFT JOIN write_offs w ON day_book.subject_kind = 'write-off' AND w.id = day_book.subject_id
    LEFT JOIN drawer_counts drawer ON day_book.subject_kind = 'drawer-count' AND drawer.id = day_book.subject_id
    LEFT JOIN closed_periods closed ON day_book.subject_kind = 'closed-period' AND closed.id = day_book.subject_id
    LEFT JOIN repairs r ON r.id = CASE day_book.subject_kind
      WHEN 'write-off' THEN w.repair_id WHEN 'repair' THEN day_book.subject_id WHEN 'estimate' THEN e.repair_id WHEN 'run-in' THEN run.repair_id END
    LEFT JOIN documents d ON day_book.subject_kind = 'document' AND d.id = day_book.subject_id
    LEFT JOIN repairs dr ON dr.id = d.repair_id
    LEFT JOIN owners o ON o.id = CASE day_book.subject_kind
      WHEN 'owner' THEN day_book.subject_id WHEN 'document' THEN d.owner_id END
    LEFT JOIN owners ro ON ro.id = r.owner_id
    LEFT JOIN clocks c ON day_book.subject_kind = 'clock' AND c.id = day_book.subject_id
    LEFT JOIN people p ON day_book.subject_kind = 'person' AND p.id = day_book.subject_id
    LEFT JOIN parts ON day_book.subject_kind = 'part' AND parts.id = day_book.subject_id
    LEFT JOIN vendors ON day_book.subject_kind = 'vendor' AND vendors.id = day_book.subject_id
    WHERE ${where ?? sql`1`} ORDER BY ${orderBy} LIMIT ${limit}`)

/** What is looked for in the day book; null where it does not matter. */
export interface DayBookAsked {
  /** The first part of the names of its acts, such as `shelf`. */
  readonly area: string | null
  readonly personId: number | null
  /** A repair's number: every act on it, its estimates, run-ins and papers. */
  readonly repair: number | null
  /** Days of the shop, both included. */
  readonly from: string | null
  readonly to: string | null
}

const idsOf = (table: string, repair: number) =>
  sql`(SELECT x.id FROM ${sql.raw(table)} x JOIN repairs r ON r.id = x.repair_id WHERE r.number = ${repair})`

const ofRepair = (number: number): SQL => sql`(
  (subject_kind = 'repair' AND subject_id IN (SELECT id FROM repairs WHERE number = ${number}))
  OR (subject_kind = 'estimate' AND subject_id IN ${idsOf('estimates', number)})
  OR (subject_kind = 'run-in' AND subject_id IN ${idsOf('run_in_runs', number)})
  OR (subject_kind = 'document' AND subject_id IN ${idsOf('documents', number)})
  OR (subject_kind = 'write-off' AND subject_id IN ${idsOf('write_offs', number)}))`

const meets = ({ area, personId, repair, from, to }: DayBookAsked, timeZone: string): SQL | undefined =>
  and(
    area === null ? undefined : like(s.dayBook.act, `${area}.%`),
    personId === null ? undefined : eq(s.dayBook.personId, personId),
    repair === null ? undefined : ofRepair(repair),
    from === null ? undefined : gte(s.dayBook.at, dayBegins(from, timeZone)),
    to === null ? undefined : lte(s.dayBook.at, dayEnds(to, timeZone)),
  )

/** The day book, newest first, a page at a time, what is asked for of it: each act with who did it, its input, and what it was about. */
export function dayBookView(read: Read, { before, after, ...asked }: Turn & DayBookAsked, timeZone: string) {
  const kept = meets(asked, timeZone)
  const { rows, ...more } = turned(s.dayBook.id, { before, after }, kept, ({ where, orderBy, limit }) =>
    dayBookRows(read, where, orderBy, limit),
  )
  const takenOut = rows.some(row => row.input === null) ? redactions(read) : undefined
  return {
    ...more,
    rows: rows.map(row => ({
      ...row,
      local: localOf(row.at, timeZone),
      redaction: takenOut?.get(row.id) ?? null,
    })),
  }
}

/** The whole day book in order, as acts that can be played again. */
export const dayBookActs = (read: Read) =>
  read
    .select({
      at: s.dayBook.at,
      who: s.dayBook.personId,
      act: s.dayBook.act,
      version: s.dayBook.version,
      key: s.dayBook.key,
      salt: s.dayBook.salt,
      input: s.dayBook.input,
    })
    .from(s.dayBook)
    .orderBy(asc(s.dayBook.id))
    .all()
    .map(({ input, key, salt, ...act }) => ({
      ...act,
      ...(key === null ? {} : { key }),
      ...(salt === null ? {} : { salt }),
      ...(input === null ? { redacted: true } : { with: JSON.parse(input) as Record<string, unknown> }),
    }))
