import { sql } from 'drizzle-orm'
import { table } from './table.ts'

/** Owners, merged duplicates with the one they were merged into. */
export const owners = table({
  columns: ['id', 'name', 'address', 'country', 'notes', 'merged_into', 'since'],
  page: (after, limit) => sql`
    SELECT id, name, address, country, notes, merged_into_id AS merged_into, since_at AS since
    FROM owners WHERE id > ${after} ORDER BY id LIMIT ${limit}`,
})

/** Phones and e-mails of owners, struck out ones with the reason. */
export const contacts = table({
  columns: ['id', 'owner', 'kind', 'value', 'preferred', 'struck_out'],
  page: (after, limit) => sql`
    SELECT id, owner_id AS owner, kind, value, preferred, struck_reason AS struck_out
    FROM owner_contacts WHERE id > ${after} ORDER BY id LIMIT ${limit}`,
})

const clockColumns = [
  'form',
  'maker',
  'serial',
  'marks',
  'trains',
  'power',
  'duration',
  'escapement',
  'strike',
  'chime',
  'chime_corrects',
  'beats',
  'dial',
  'jewelled',
  'luminous',
  'mercury',
  'mains',
  'notes',
  'height_mm',
  'width_mm',
  'depth_mm',
  'weight_g',
] as const

/** Clocks with the owner they belong to now; empty where nobody has looked yet. */
export const clocks = table({
  columns: ['id', 'owner', ...clockColumns],
  page: (after, limit) => sql`
    SELECT clocks.id, clock_owners.owner_id AS owner, ${sql.raw(clockColumns.map(name => `nullif(clocks.${name}, 'unknown') AS ${name}`).join(', '))}
    FROM clocks LEFT JOIN clock_owners ON clock_owners.clock_id = clocks.id AND clock_owners.until_at IS NULL
    WHERE clocks.id > ${after} ORDER BY clocks.id LIMIT ${limit}`,
})
