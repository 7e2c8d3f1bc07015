import { sql } from 'drizzle-orm'
import { type Check, fault } from './check.ts'

interface Joined {
  readonly repair: number
  readonly lead: number | null
  readonly agrees: 0 | 1
}

/** Repairs that stand on one estimate: all of one owner, on one paper sent at one time, numbered by a row that is numbered by itself. */
export const estimates: Check = function* ({ read }) {
  const rows = read.all<Joined>(sql`
    SELECT r.number AS repair, lr.number AS lead,
      l.lead_id IS NULL AND lr.owner_id = r.owner_id AND l.repair_id <> e.repair_id
        AND e.document_id IS l.document_id AND e.sent_at IS l.sent_at AS agrees
    FROM estimates e
    JOIN repairs r ON r.id = e.repair_id
    LEFT JOIN estimates l ON l.id = e.lead_id
    LEFT JOIN repairs lr ON lr.id = l.repair_id
    WHERE e.lead_id IS NOT NULL AND e.lead_id <> e.id
    ORDER BY e.id`)
  for (const { repair, lead, agrees } of rows)
    if (!agrees) yield fault('estimate.together', { repair, lead: lead ?? 0 })
  return rows.length
}
