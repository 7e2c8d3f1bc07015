import { sql } from 'drizzle-orm'
import { table } from './table.ts'

/** Repairs with where they stand and what is due on them. */
export const repairs = table({
  columns: [
    'id',
    'number',
    'clock',
    'owner',
    'taken_in',
    'fault',
    'scope',
    'comeback_of',
    'covered',
    'estimated_on',
    'ready',
    'standing',
    'standing_since',
    'collected',
    'due',
  ],
  amounts: ['due'],
  page: (after, limit) => sql`
    SELECT r.id, r.number, r.clock_id AS clock, r.owner_id AS owner, r.taken_in_at AS taken_in, r.fault, r.scope,
      earlier.number AS comeback_of, r.covered, r.estimated_on, r.ready_at AS ready, r.stage AS standing,
      r.stage_since AS standing_since, hand_overs.at AS collected, r.due_minor AS due
    FROM repairs r
    LEFT JOIN repairs earlier ON earlier.id = r.comeback_of_id
    LEFT JOIN hand_overs ON hand_overs.repair_id = r.id
    WHERE r.id > ${after} ORDER BY r.id LIMIT ${limit}`,
})

/** Bench time, struck out entries with the reason. */
export const labour = table({
  columns: ['id', 'repair', 'person', 'task', 'started', 'ended', 'timed', 'note', 'struck_out'],
  page: (after, limit) => sql`
    SELECT l.id, r.number AS repair, people.name AS person, l.task, l.started_at AS started, l.ended_at AS ended, l.timed,
      l.note, l.struck_reason AS struck_out
    FROM labour_entries l JOIN repairs r ON r.id = l.repair_id LEFT JOIN people ON people.id = l.person_id
    WHERE l.id > ${after} ORDER BY l.id LIMIT ${limit}`,
})

/** Parts in the stores with what is there and what they cost and sell at. */
export const stock = table({
  columns: [
    'id',
    'kind',
    'name',
    'sizes',
    'ends',
    'vendor',
    'kept_at',
    'unit_cost',
    'unit_price',
    'in_stock',
    'reorder_at',
    'active',
  ],
  amounts: ['unit_cost', 'unit_price'],
  page: (after, limit) => sql`
    SELECT p.id, p.kind, p.name, p.sizes, p.ends, v.name AS vendor, p.kept_at, p.unit_cost_minor AS unit_cost,
      p.unit_price_minor AS unit_price, p.in_stock, p.reorder_at, p.active
    FROM parts p LEFT JOIN vendors v ON v.id = p.vendor_id WHERE p.id > ${after} ORDER BY p.id LIMIT ${limit}`,
})

/** Every move of stock: received, used, put back, counted. */
export const stockMoves = table({
  columns: [
    'id',
    'at',
    'part',
    'person',
    'kind',
    'quantity',
    'repair',
    'unit_cost',
    'unit_price',
    'undoes',
    'note',
  ],
  amounts: ['unit_cost', 'unit_price'],
  page: (after, limit) => sql`
    SELECT m.id, m.at, m.part_id AS part, people.name AS person, m.kind, m.quantity, r.number AS repair,
      m.unit_cost_minor AS unit_cost, m.unit_price_minor AS unit_price, m.undoes_id AS undoes, m.note
    FROM stock_moves m LEFT JOIN repairs r ON r.id = m.repair_id LEFT JOIN people ON people.id = m.person_id
    WHERE m.id > ${after} ORDER BY m.id LIMIT ${limit}`,
})

/** The day book with its hashes. */
export const dayBook = table({
  columns: [
    'id',
    'at',
    'person',
    'act',
    'version',
    'subject_kind',
    'subject',
    'input',
    'salt',
    'commitment',
    'previous_hash',
    'hash',
  ],
  page: (after, limit) => sql`
    SELECT d.id, d.at, people.name AS person, d.act, d.version, d.subject_kind, d.subject_id AS subject, d.input, d.salt, d.commitment,
      d.previous_hash, d.hash
    FROM day_book d LEFT JOIN people ON people.id = d.person_id WHERE d.id > ${after} ORDER BY d.id LIMIT ${limit}`,
})
