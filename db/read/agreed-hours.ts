import { and, asc, eq } from 'drizzle-orm'
import { minutesOfHours } from '../../core/labour/hours.ts'
import type { Read } from '../file/ledger.ts'
import { amongAsked, question, these } from '../rows/question.ts'
import { estimateLines, estimates, goAheads } from '../schema/index.ts'

const goneAhead = question(read =>
  read
    .select({ id: estimates.id, supplement: estimates.supplement, repairId: estimates.repairId })
    .from(goAheads)
    .innerJoin(estimates, eq(estimates.id, goAheads.estimateId))
    .where(and(amongAsked(goAheads.repairId), eq(goAheads.answer, 'go-ahead')))
    .orderBy(asc(estimates.version)),
)

const labourLines = question(read =>
  read
    .select({
      estimateId: estimateLines.estimateId,
      quantity: estimateLines.quantity,
      work: estimateLines.work,
    })
    .from(estimateLines)
    .where(and(amongAsked(estimateLines.estimateId), eq(estimateLines.kind, 'labour')))
    .orderBy(asc(estimateLines.id)),
)

/** The estimates that make up what the owners agreed to, with their repairs: of each the last one, with its supplements. */
function agreedEstimates(read: Read, repairIds: readonly number[]) {
  const rows = goneAhead(read).all(these(repairIds))
  const bases = new Map(rows.filter(row => !row.supplement).map(row => [row.repairId, row.id]))
  return rows.filter(row => row.supplement || bases.get(row.repairId) === row.id)
}

type AgreedLabour = ReturnType<typeof agreedLabour>

/** The labour lines the owners of these repairs agreed to. */
export function agreedLabour(read: Read, repairIds: readonly number[]) {
  const agreed = agreedEstimates(read, repairIds)
  const repairOf = new Map(agreed.map(({ id, repairId }) => [id, repairId]))
  const lines = labourLines(read)
    .all(these(agreed.map(({ id }) => id)))
    .map(({ estimateId, ...line }) => ({ ...line, repairId: repairOf.get(estimateId) ?? 0 }))
  return { repairIds: new Set(repairOf.values()), lines }
}

/** The bench minutes agreed for each of these repairs: the hours of the labour lines; a repair where nothing is agreed is not in it. */
export const agreedMinutesOf = (read: Read, repairIds: readonly number[]): ReadonlyMap<number, number> =>
  minutesByRepair(agreedLabour(read, repairIds))

/** The bench minutes of what was agreed, by repair. */
export function minutesByRepair({ repairIds, lines }: AgreedLabour): ReadonlyMap<number, number> {
  const byRepair = Map.groupBy(lines, line => line.repairId)
  return new Map(
    [...repairIds].map(id => [id, minutesOfHours((byRepair.get(id) ?? []).map(line => line.quantity))]),
  )
}

/** The bench minutes the owner of one repair agreed to; null where nothing is agreed. */
export const agreedMinutes = (read: Read, repairId: number): number | null =>
  agreedMinutesOf(read, [repairId]).get(repairId) ?? null
