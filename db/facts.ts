import { and, eq, gt, isNull, sql } from 'drizzle-orm'
import { type RepairAct, type RepairFacts, repairStanding, type Standing } from '../core/standing/standing.ts'
import { repairBalance } from './balance.ts'
import type { Read, Write } from './ledger.ts'
import { known, refuse } from './refusal.ts'
import {
  documents,
  estimates,
  findings,
  goAheads,
  handOvers,
  labourEntries,
  repairs,
  runInRuns,
  waits,
} from './schema/index.ts'

export type RepairRow = typeof repairs.$inferSelect

/** The repair, or a refusal. */
export const repairRow = (read: Read, id: number): RepairRow =>
  known(read.select().from(repairs).where(eq(repairs.id, id)).get(), 'repair.unknown', 'repairId')

const any = (rows: unknown[]): boolean => rows.length > 0

function invoiced(read: Read, repairId: number): boolean {
  const rows = read
    .select({ total: sql<number>`sum(${documents.totalMinor})`, count: sql<number>`count(*)` })
    .from(documents)
    .where(and(eq(documents.repairId, repairId), sql`${documents.kind} IN ('invoice', 'credit-note')`))
    .get()
  // An invoice that was credited in full counts for nothing: the repair may be invoiced again.
  const credited = any(
    read
      .select({ id: documents.id })
      .from(documents)
      .where(and(eq(documents.repairId, repairId), eq(documents.kind, 'credit-note')))
      .limit(1)
      .all(),
  )
  return (rows?.count ?? 0) > 0 && !(credited && rows?.total === 0)
}

function estimateFacts(read: Read, repairId: number) {
  const rows = read
    .select({ sentAt: estimates.sentAt })
    .from(estimates)
    .where(eq(estimates.repairId, repairId))
    .all()
  const last = rows.at(-1)
  return { estimateWritten: rows.length > 0, estimateSent: Boolean(last?.sentAt) }
}

function lastWord(read: Read, repairId: number) {
  const rows = read
    .select({ at: goAheads.at, answer: goAheads.answer, estimateId: goAheads.estimateId })
    .from(goAheads)
    .where(eq(goAheads.repairId, repairId))
    .orderBy(goAheads.at, goAheads.id)
    .all()
  return rows
}

/** A declined supplement leaves the first go-ahead standing; a declined first estimate ends the work. */
function wordOf(words: readonly { answer: 'go-ahead' | 'declined' }[]): RepairFacts['word'] {
  if (words.some(word => word.answer === 'go-ahead')) return 'go-ahead'
  return words.length > 0 ? 'declined' : null
}

function runInFact(read: Read, repairId: number): RepairFacts['runIn'] {
  const last = read
    .select({ outcome: runInRuns.outcome })
    .from(runInRuns)
    .where(eq(runInRuns.repairId, repairId))
    .orderBy(sql`${runInRuns.id} DESC`)
    .limit(1)
    .get()
  if (!last) return 'none'
  if (last.outcome === null) return 'running'
  return last.outcome === 'passed' ? 'passed' : 'to-bench'
}

function labourFacts(read: Read, repairId: number) {
  const rows = read
    .select({ endedAt: labourEntries.endedAt, task: labourEntries.task })
    .from(labourEntries)
    .where(and(eq(labourEntries.repairId, repairId), isNull(labourEntries.struckReason)))
    .all()
  // Looking a clock over comes before the estimate; it is not the work itself.
  return {
    workBegun: rows.some(row => row.task !== 'assess'),
    labourRunning: rows.some(row => row.endedAt === null),
  }
}

function findingOpen(read: Read, repairId: number, lastWordAt: string): boolean {
  return any(
    read
      .select({ id: findings.id })
      .from(findings)
      .where(
        and(
          eq(findings.repairId, repairId),
          eq(findings.needsWord, true),
          isNull(findings.struckReason),
          gt(findings.at, lastWordAt),
        ),
      )
      .limit(1)
      .all(),
  )
}

/** Everything on record about a repair that its standing depends on. */
export function repairFacts(read: Read, repair: RepairRow): RepairFacts {
  const words = lastWord(read, repair.id)
  const collected = read
    .select({ at: handOvers.at })
    .from(handOvers)
    .where(eq(handOvers.repairId, repair.id))
    .get()
  const open = read
    .select({ reason: waits.reason })
    .from(waits)
    .where(and(eq(waits.repairId, repair.id), isNull(waits.untilAt)))
    .all()
  return {
    covered: repair.covered,
    estimateOnly: repair.estimateOnly,
    ...estimateFacts(read, repair.id),
    word: wordOf(words),
    findingOpen: findingOpen(read, repair.id, words.at(-1)?.at ?? ''),
    ...labourFacts(read, repair.id),
    waitsOpen: open.map(wait => wait.reason),
    runIn: runInFact(read, repair.id),
    readyAt: repair.readyAt,
    collectedAt: collected?.at ?? null,
    invoiced: invoiced(read, repair.id),
  }
}

/** Where the repair stands by what is on record. */
export const standingOf = (read: Read, repair: RepairRow): Standing =>
  repairStanding(repairFacts(read, repair))

/** The repair, when `act` is open to it now; otherwise a refusal with what blocks it. */
export function repairOpenTo(tx: Read, repairId: number, act: RepairAct): RepairRow {
  const repair = repairRow(tx, repairId)
  const blocked = standingOf(tx, repair).blocked.find(b => b.act === act)
  if (blocked) refuse(blocked.code)
  return repair
}

/** The repair while its clock is still in the shop. */
export function repairInShop(tx: Read, repairId: number): RepairRow {
  const repair = repairRow(tx, repairId)
  if (repair.stage === 'collected') refuse('repair.collected', 'repairId', { number: repair.number })
  return repair
}

/** Derives standing and balance anew after facts were written, and keeps them where lists can ask for them. Every verb on a repair ends with this. */
export function settle(tx: Write, repairId: number, at: string): Standing {
  const repair = repairRow(tx, repairId)
  const standing = standingOf(tx, repair)
  const { due } = repairBalance(tx, repairId)
  const moved = standing.stage === repair.stage ? {} : { stage: standing.stage, stageSince: at }
  tx.update(repairs)
    .set({ ...moved, dueMinor: due })
    .where(eq(repairs.id, repairId))
    .run()
  return standing
}
