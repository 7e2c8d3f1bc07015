import { and, desc, eq } from 'drizzle-orm'
import { addDays } from '../../core/calendar/civil.ts'
import { cautionsFor } from '../../core/cautions/cautions.ts'
import { type Minor, minor, parseMinor } from '../../core/money/minor.ts'
import type { EstimateContents, PaperLine } from '../../core/papers/contents.ts'
import { type Priced, priced } from '../../core/pricing/price.ts'
import type { Settings } from '../../core/shop/settings.ts'
import type { Way } from '../../core/vocabulary/work.ts'
import { accepted, amountIn } from '../checked-in.ts'
import { type RepairRow, repairInShop, repairOpenTo, settle } from '../facts.ts'
import { dayOfDoing, issue, paperHead } from '../issue.ts'
import type { Read, Write } from '../ledger.ts'
import { type LineEntry, pricedLines } from '../price-lines.ts'
import { known, Refusal, refuse } from '../refusal.ts'
import { estimateLines, estimates, goAheads } from '../schema/index.ts'
import { readSettings } from '../settings.ts'
import { type Doing, verb } from '../verb.ts'
import { clockRow } from './register.ts'

export type EstimateRow = typeof estimates.$inferSelect

/** An estimate as written: its lines, and an upper end where the work cannot be known before the strip. */
export interface WriteEstimate {
  readonly repairId: number
  readonly supplement: boolean
  readonly lines: readonly LineEntry[]
  readonly high: string | null
  readonly remark: string
}

export const estimateRow = (read: Read, id: number): EstimateRow =>
  known(read.select().from(estimates).where(eq(estimates.id, id)).get(), 'estimate.unknown', 'estimateId')

const lastVersion = (read: Read, repairId: number): EstimateRow | undefined =>
  read
    .select()
    .from(estimates)
    .where(eq(estimates.repairId, repairId))
    .orderBy(desc(estimates.version))
    .limit(1)
    .get()

/** The limit in force: what the owner last agreed to for the whole repair, in minor units; null while nothing is agreed. */
export const agreedLimit = (read: Read, repairId: number): Minor | null =>
  read
    .select({ limit: goAheads.limitMinor })
    .from(goAheads)
    .where(and(eq(goAheads.repairId, repairId), eq(goAheads.answer, 'go-ahead')))
    .orderBy(desc(goAheads.id))
    .limit(1)
    .get()?.limit ?? null

function keepLines(
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

/** Writes an estimate: a new version beside the earlier ones, priced at once; it binds nobody until it is sent. */
export const writeEstimate = verb('estimates.write', (tx, input: WriteEstimate, doing) => {
  const settings = readSettings(tx)
  const repair = repairOpenTo(tx, input.repairId, 'write-estimate')
  const { lines, priced: sums, tax } = pricedLines(tx, repair, input.lines, settings)
  const highMinor = accepted(amountIn(settings, input.high, 'high'))
  if (highMinor !== null && highMinor < sums.taxInclusive) refuse('estimate.highBelowLow', 'high')
  const version = (lastVersion(tx, repair.id)?.version ?? 0) + 1
  const { id } = tx
    .insert(estimates)
    .values({
      repairId: repair.id,
      version,
      supplement: input.supplement,
      writtenAt: doing.at,
      tax,
      highMinor,
      totalMinor: sums.taxInclusive,
      remark: input.remark,
    })
    .returning()
    .get()
  keepLines(tx, id, lines, input.lines)
  settle(tx, repair.id, doing.at)
  return {
    subject: { kind: 'estimate', id },
    result: { id, number: `${repair.number}/${version}`, totalMinor: sums.taxInclusive, taxMinor: sums.tax },
  }
})

/** The lines of an estimate with what they were made from, so that the next version can start from them. */
export function estimateEntries(read: Read, estimateId: number) {
  return read
    .select()
    .from(estimateLines)
    .where(eq(estimateLines.estimateId, estimateId))
    .orderBy(estimateLines.position)
    .all()
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

/** What an estimate comes to by the rules it was written under. */
export function estimatePriced(read: Read, estimate: EstimateRow, currency: string): Priced {
  const result = priced({ currency, tax: estimate.tax, lines: estimatePaperLines(read, estimate.id) })
  if (!result.ok) throw new Refusal(result.problems)
  return result.value
}

function estimateContents(
  tx: Write,
  doing: Doing,
  settings: Settings,
  repair: RepairRow,
  estimate: EstimateRow,
) {
  const today = dayOfDoing(doing, settings)
  const agreed = agreedLimit(tx, repair.id)
  const contents: Omit<EstimateContents, 'number'> = {
    ...paperHead(tx, settings, today, { ownerId: repair.ownerId, repair }),
    kind: 'estimate',
    version: estimate.version,
    supplement: estimate.supplement,
    lines: estimatePaperLines(tx, estimate.id),
    priced: estimatePriced(tx, estimate, settings.place.currency),
    tax: estimate.tax,
    ...(estimate.supplement && agreed !== null ? { agreedBefore: agreed } : {}),
    ...(estimate.highMinor === null ? {} : { range: { low: estimate.totalMinor, high: estimate.highMinor } }),
    validUntil: addDays(today, settings.estimate.validDays),
    limit: {
      overrunPercent: settings.estimate.overrunPercent,
      overrun: accepted(
        parseMinor(settings.estimate.overrunAmount, settings.place.currency, 'estimate.overrunAmount'),
      ),
    },
    ...(repair.estimatedOn ? { estimatedOn: repair.estimatedOn } : {}),
    ...(estimate.remark ? { notes: estimate.remark } : {}),
    cautions: cautionsFor(clockRow(tx, repair.clockId)),
  }
  return contents
}

/** Sends an estimate: freezes it as a document, dates its validity. It can be sent once. */
export const sendEstimate = verb('estimates.send', (tx, input: { estimateId: number; way: Way }, doing) => {
  const settings = readSettings(tx)
  const estimate = estimateRow(tx, input.estimateId)
  if (estimate.sentAt) refuse('estimate.sent', 'estimateId')
  const repair = repairInShop(tx, estimate.repairId)
  const contents = estimateContents(tx, doing, settings, repair, estimate)
  const document = issue(tx, doing, {
    contents,
    ownerId: repair.ownerId,
    repairId: repair.id,
    number: `${repair.number}/${estimate.version}`,
  })
  tx.update(estimates)
    .set({
      sentAt: doing.at,
      sentWay: input.way,
      documentId: document.id,
      validUntil: contents.validUntil ?? null,
    })
    .where(eq(estimates.id, estimate.id))
    .run()
  settle(tx, repair.id, doing.at)
  return {
    subject: { kind: 'estimate', id: estimate.id },
    result: { documentId: document.id, number: document.number, totalMinor: document.totalMinor },
  }
})

/** The owner's word on an estimate that was sent. */
export interface RecordWord {
  readonly estimateId: number
  readonly answer: 'go-ahead' | 'declined'
  readonly who: string
  readonly way: Way
  /** What the owner agrees to for the whole repair; by default the upper end of the estimate, with what was agreed before a supplement. */
  readonly limit: string | null
  readonly remark: string
}

function limitOf(tx: Write, input: RecordWord, estimate: EstimateRow): Minor | null {
  if (input.answer === 'declined') return null
  const said = accepted(amountIn(readSettings(tx), input.limit, 'limit'))
  if (said !== null) return said
  const asked = estimate.highMinor ?? estimate.totalMinor
  const before = estimate.supplement ? (agreedLimit(tx, estimate.repairId) ?? 0) : 0
  return minor(asked + before)
}

/** Records the owner's word: who, how, when, and up to what sum. */
export const recordWord = verb('estimates.recordWord', (tx, input: RecordWord, doing) => {
  const estimate = estimateRow(tx, input.estimateId)
  if (!estimate.sentAt) refuse('estimate.notSent', 'estimateId')
  const repair = repairOpenTo(tx, estimate.repairId, 'record-word')
  const limitMinor = limitOf(tx, input, estimate)
  tx.insert(goAheads)
    .values({
      repairId: repair.id,
      estimateId: estimate.id,
      at: doing.at,
      personId: doing.personId,
      answer: input.answer,
      who: input.who,
      way: input.way,
      limitMinor,
      remark: input.remark,
    })
    .run()
  const { stage } = settle(tx, repair.id, doing.at)
  return { subject: { kind: 'repair', id: repair.id }, result: { limitMinor, stage } }
})
