import { desc, eq, or } from 'drizzle-orm'
import type { PaperLine } from '../../core/papers/contents.ts'
import { type Priced, priced } from '../../core/pricing/price.ts'
import type { Read, Write } from '../file/ledger.ts'
import { askedId, question } from '../rows/question.ts'
import { known, Refusal } from '../rows/refusal.ts'
import { estimateLines, estimates, repairs } from '../schema/index.ts'
import type { LineEntry } from './line-entry.ts'

/**
 * What an estimate says of one repair. Where several repairs stand on one estimate each has a row of its own, which it
 * reads as its estimate; they share its number, the paper and the day it was sent.
 */
export type EstimateRow = typeof estimates.$inferSelect

/** The row, or a refusal on `field`. */
export const estimateRow = (read: Read, id: number, field = 'estimateId'): EstimateRow =>
  known(read.select().from(estimates).where(eq(estimates.id, id)).get(), 'estimate.unknown', field)

/** The last version written for a repair. */
export const lastVersion = (read: Read, repairId: number): EstimateRow | undefined =>
  read
    .select()
    .from(estimates)
    .where(eq(estimates.repairId, repairId))
    .orderBy(desc(estimates.version))
    .limit(1)
    .get()

/** The row an estimate is numbered by. */
export const leadId = ({ id, leadId }: EstimateRow): number => leadId ?? id

const together = question(read =>
  read
    .select()
    .from(estimates)
    .where(or(eq(estimates.id, askedId), eq(estimates.leadId, askedId)))
    .orderBy(estimates.id),
)

/** Every row of the estimate this one stands on, the one it is numbered by first. */
export const onOneEstimate = (read: Read, estimate: EstimateRow): EstimateRow[] =>
  together(read).all({ id: leadId(estimate) })

const numbered = question(read =>
  read
    .select({ number: repairs.number, version: estimates.version })
    .from(estimates)
    .innerJoin(repairs, eq(repairs.id, estimates.repairId))
    .where(eq(estimates.id, askedId)),
)

/** The number on the paper: of the repair that leads, and its version, such as `2231/2`. */
export function estimateNumber(read: Read, estimate: EstimateRow): string {
  const lead = numbered(read).get({ id: leadId(estimate) })
  return `${lead?.number}/${lead?.version}`
}

/** Keeps the lines of an estimate with what they were made from. */
export function keepLines(
  tx: Write,
  estimateId: number,
  lines: readonly PaperLine[],
  entries: readonly LineEntry[],
): void {
  for (const [position, line] of lines.entries()) {
    const { kind, description, quantity, unit, charge, taxes, working, net, work } = line
    const { partId = null, outsideWorkId = null, findingId = null, priced = null } = entries[position] ?? {}
    tx.insert(estimateLines)
      .values({
        estimateId,
        position,
        kind,
        description,
        quantity,
        unit,
        charge: charge ?? '0',
        taxes: [...taxes],
        working: [...working],
        netMinor: net,
        partId,
        outsideWorkId,
        findingId,
        work: work ?? null,
        priced,
      })
      .run()
  }
}

const linesOf = question(read =>
  read
    .select()
    .from(estimateLines)
    .where(eq(estimateLines.estimateId, askedId))
    .orderBy(estimateLines.position),
)

/** The lines of an estimate with what they were made from, so that the next version can start from them. */
export function estimateEntries(read: Read, estimateId: number) {
  return linesOf(read)
    .all({ id: estimateId })
    .map(row => {
      const { kind, description, quantity, unit, charge, taxes, working, netMinor: net, work } = row
      const line: PaperLine = {
        kind,
        description,
        quantity,
        unit,
        ...(charge === '0' ? {} : { charge }),
        taxes,
        working,
        net,
        ...(work ? { work } : {}),
      }
      const { partId, outsideWorkId, findingId, priced } = row
      return { line, partId, outsideWorkId, findingId, priced }
    })
}

/** The lines of an estimate as a paper carries them. */
export const estimatePaperLines = (read: Read, estimateId: number): PaperLine[] =>
  estimateEntries(read, estimateId).map(({ line }) => line)

/** What an estimate comes to for its repair, by the rules it was written under. */
export function estimatePriced(read: Read, estimate: EstimateRow, currency: string): Priced {
  const result = priced({ currency, tax: estimate.tax, lines: estimatePaperLines(read, estimate.id) })
  if (!result.ok) throw new Refusal(result.problems)
  return result.value
}
