import { and, eq, gt, sql } from 'drizzle-orm'
import { civilDateOf } from '../core/calendar/zone.ts'
import { type Cover, type Stay, warrantyCover } from '../core/warranty/cover.ts'
import type { RepairRow } from './facts.ts'
import { currentOwnerId } from './find-entries.ts'
import type { Read } from './ledger.ts'
import { askedId, question } from './question.ts'
import { handOvers, repairs, warranties } from './schema/index.ts'
import { readSettings } from './settings.ts'

export type WarrantyRow = typeof warranties.$inferSelect

const given = question(read => read.select().from(warranties).where(eq(warranties.repairId, askedId)))

/** The warranty given for a repair, if any. */
export const warrantyOf = (read: Read, repairId: number): WarrantyRow | undefined =>
  given(read).get({ id: repairId })

const visitsAfter = question(read =>
  read
    .select({ takenInAt: repairs.takenInAt, covered: repairs.covered, handedOverAt: handOvers.at })
    .from(repairs)
    .leftJoin(handOvers, eq(handOvers.repairId, repairs.id))
    .where(and(eq(repairs.clockId, sql.placeholder('clockId')), gt(repairs.id, askedId)))
    .orderBy(repairs.id),
)

/** Later visits of the same clock, which may pause or restart the term. */
const laterStays = (read: Read, { id, clockId }: RepairRow, timeZone: string): Stay[] =>
  visitsAfter(read)
    .all({ id, clockId })
    .map(({ takenInAt, covered, handedOverAt }) => ({
      from: civilDateOf(takenInAt, timeZone),
      to: handedOverAt ? civilDateOf(handedOverAt, timeZone) : null,
      underWarranty: covered,
    }))

/** Whether the warranty of a repair covers the day, with every reason, a change of owner among them; undefined when none was given. */
export function coverOf(read: Read, repair: RepairRow, on: string): Cover | undefined {
  const warranty = warrantyOf(read, repair.id)
  if (!warranty) return undefined
  const { startOn, length, unit, convention, onComeback, pausesInShop, exclusions } = warranty
  const cover = warrantyCover({
    terms: { length, unit, convention, onComeback, pausesInShop, exclusions },
    start: startOn,
    stays: laterStays(read, repair, readSettings(read).place.timeZone),
    causes: currentOwnerId(read, repair.clockId) === repair.ownerId ? [] : ['not-transferable'],
    on,
  })
  if (!cover.ok)
    throw new Error(`the warranty of repair ${repair.number} does not reckon: ${cover.problems[0]?.code}`)
  return cover.value
}
