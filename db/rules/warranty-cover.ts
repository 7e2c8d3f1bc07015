import { and, eq, gt, sql } from 'drizzle-orm'
import { civilDateOf } from '../../core/calendar/zone.ts'
import type { Settings, WarrantyTermSetting } from '../../core/shop/settings.ts'
import { isWithoutOrder } from '../../core/standing/stages.ts'
import type { Exclusion } from '../../core/vocabulary/work.ts'
import { type Cover, type Stay, warrantyCover } from '../../core/warranty/cover.ts'
import type { Read } from '../file/ledger.ts'
import { currentOwnerId } from '../rows/find-entries.ts'
import { askedId, question } from '../rows/question.ts'
import { refuse } from '../rows/refusal.ts'
import { readSettings } from '../rows/settings.ts'
import { handOvers, repairs, warranties } from '../schema/index.ts'
import type { RepairRow } from './facts.ts'

/** What a change of owner is called among the things a warranty may leave out. */
const passedOn: Exclusion = 'not-transferable'

export type WarrantyRow = typeof warranties.$inferSelect

const given = question(read => read.select().from(warranties).where(eq(warranties.repairId, askedId)))

/** The warranty given for a repair, if any. */
export const warrantyOf = (read: Read, repairId: number): WarrantyRow | undefined =>
  given(read).get({ id: repairId })

/** How long the shop answers for a repair that is handed over now, as its terms say; null where it does not: under an earlier warranty, or with nothing done. */
export const warrantyAhead = ({ warranty }: Settings, repair: RepairRow): WarrantyTermSetting =>
  isWithoutOrder(repair) ? null : warranty.terms[repair.scope]

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

/**
 * Whether the warranty of a repair covers the day, with every reason, a change of owner among them; undefined when none was given.
 * `causes` is what the fault comes from, as far as that is known.
 */
export function coverOf(
  read: Read,
  repair: RepairRow,
  on: string,
  causes: readonly Exclusion[] = [],
): Cover | undefined {
  const warranty = warrantyOf(read, repair.id)
  if (!warranty) return undefined
  const { startOn, length, unit, convention, onComeback, pausesInShop, exclusions } = warranty
  const cover = warrantyCover({
    terms: { length, unit, convention, onComeback, pausesInShop, exclusions },
    start: startOn,
    stays: laterStays(read, repair, readSettings(read).place.timeZone),
    causes: [...causes, ...(currentOwnerId(read, repair.clockId) === repair.ownerId ? [] : [passedOn])],
    on,
  })
  if (!cover.ok)
    throw new Error(`the warranty of repair ${repair.number} does not reckon: ${cover.problems[0]?.code}`)
  return cover.value
}

/** Refuses to call a comeback covered where the warranty of the repair it came back from has ended by that day, or leaves out a cause. */
export function refuseUncovered(
  read: Read,
  earlier: RepairRow,
  causes: readonly Exclusion[],
  on: string,
): void {
  const cover = coverOf(read, earlier, on, causes)
  if (cover?.covered) return
  const { number } = earlier
  const left = cover?.reasons.find(reason => reason.code === 'excluded')
  if (left) refuse('comeback.excluded', 'covered', { number, cause: left.values.cause })
  refuse('comeback.notCovered', 'covered', { number })
}
