import { sql } from 'drizzle-orm'
import { isUnfinished, stagesThat } from '../../core/standing/stages.ts'
import type { Read } from '../file/ledger.ts'

/** A day something is expected on. */
export interface EstimatedDate {
  readonly number: number
  readonly on: string
  readonly owner: string
}

/** A winding or a reading that a run-in waits for. */
export interface RunInDue {
  readonly id: number
  readonly number: number
  readonly kind: 'wind' | 'reading'
  readonly at: string
  readonly place: string | null
}

/** The day a run-in is planned to end. */
export interface RunInEnd {
  readonly number: number
  readonly on: string
}

/** Parts that are expected in. */
export interface OrderDue {
  readonly id: number
  readonly on: string
  readonly part: string
}

/** Outside work that is expected back. */
export interface OutsideDue {
  readonly id: number
  readonly number: number
  readonly on: string
  readonly vendor: string
  readonly description: string
}

/** Estimated dates of the clocks whose work is not done. */
const estimated = (read: Read) =>
  read.all<EstimatedDate>(sql`
    SELECT r.number, r.estimated_on AS "on", o.name AS owner FROM repairs r JOIN owners o ON o.id = r.owner_id
    WHERE r.estimated_on IS NOT NULL AND r.stage IN ${stagesThat(isUnfinished)} ORDER BY r.id`)

const runIn = (read: Read) =>
  read.all<RunInDue>(sql`
    SELECT d.id, r.number, d.kind, d.due_at AS at, p.name AS place
    FROM run_in_dues d JOIN run_in_runs run ON run.id = d.run_id JOIN repairs r ON r.id = run.repair_id
      LEFT JOIN shelf_places p ON p.id = run.place_id
    WHERE d.done_at IS NULL AND run.ended_at IS NULL ORDER BY d.id`)

const outside = (read: Read) =>
  read.all<OutsideDue>(sql`
    SELECT w.id, r.number, w.due_on AS "on", v.name AS vendor, w.description
    FROM outside_work w JOIN repairs r ON r.id = w.repair_id JOIN vendors v ON v.id = w.vendor_id
    WHERE w.due_on IS NOT NULL AND w.back_at IS NULL ORDER BY w.id`)

/** The days run-ins are planned to end. */
const runInEnds = (read: Read) =>
  read.all<RunInEnd>(sql`
    SELECT r.number, run.ready_on AS "on" FROM run_in_runs run JOIN repairs r ON r.id = run.repair_id
    WHERE run.ended_at IS NULL ORDER BY run.id`)

const orders = (read: Read) =>
  read.all<OrderDue>(sql`
    SELECT o.id, o.due_on AS "on", p.name AS part FROM part_orders o JOIN parts p ON p.id = o.part_id
    WHERE o.arrived_at IS NULL AND o.due_on IS NOT NULL ORDER BY o.id`)

/** What the shop expects, and when: it stays few, as only what is open counts. */
export const expectedDates = (read: Read) => ({
  estimated: estimated(read),
  runIn: runIn(read),
  runInEnds: runInEnds(read),
  outside: outside(read),
  orders: orders(read),
})
