import { and, eq, inArray, isNull, sql } from 'drizzle-orm'
import { isInShop } from '../../core/standing/stages.ts'
import {
  type RepairAct,
  type RepairFacts,
  repairStanding,
  type Standing,
} from '../../core/standing/standing.ts'
import type { Read, Write } from '../file/ledger.ts'
import { amongAsked, askedId, question, these } from '../rows/question.ts'
import { known, refuse } from '../rows/refusal.ts'
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
} from '../schema/index.ts'
import { repairBalance } from './balance.ts'

export type RepairRow = typeof repairs.$inferSelect

/** What of a repair's own row its standing depends on. */
type StandingRow = Pick<RepairRow, 'id' | 'covered' | 'estimateOnly' | 'readyAt'>

/** The repair, or a refusal. */
export const repairRow = (read: Read, id: number): RepairRow =>
  known(repairOf(read).get({ id }), 'repair.unknown', 'repairId')

const repairOf = question(read => read.select().from(repairs).where(eq(repairs.id, askedId)))

type Ids = readonly number[]

/** What invoices and credit notes of these repairs come to. */
const billedOf = question(read =>
  read
    .select({
      repairId: documents.repairId,
      total: sql<number>`sum(${documents.totalMinor})`,
      credited: sql<number>`max(${documents.kind} = 'credit-note')`,
    })
    .from(documents)
    .where(and(amongAsked(documents.repairId), inArray(documents.kind, ['invoice', 'credit-note'])))
    .groupBy(documents.repairId),
)

/** Repairs that are invoiced; one whose invoices were credited in full may be invoiced again and does not count. */
function invoicedOf(read: Read, ids: Ids): ReadonlySet<number> {
  return new Set(
    billedOf(read)
      .all(these(ids))
      .flatMap(({ repairId, total, credited }) =>
        repairId !== null && !(credited && total === 0) ? [repairId] : [],
      ),
  )
}

const estimatesOf = question(read =>
  read
    .select({ repairId: estimates.repairId, writtenAt: estimates.writtenAt, sentAt: estimates.sentAt })
    .from(estimates)
    .where(amongAsked(estimates.repairId))
    .orderBy(estimates.repairId, estimates.version),
)

const wordsOf = question(read =>
  read
    .select({ repairId: goAheads.repairId, at: goAheads.at, answer: goAheads.answer })
    .from(goAheads)
    .where(amongAsked(goAheads.repairId))
    .orderBy(goAheads.at, goAheads.id),
)

/** A declined supplement leaves the first go-ahead standing; a declined first estimate ends the work. */
function wordOf(words: readonly { answer: 'go-ahead' | 'declined' }[]): RepairFacts['word'] {
  if (words.some(word => word.answer === 'go-ahead')) return 'go-ahead'
  return words.length > 0 ? 'declined' : null
}

const runsOf = question(read =>
  read
    .select({ repairId: runInRuns.repairId, outcome: runInRuns.outcome })
    .from(runInRuns)
    .where(amongAsked(runInRuns.repairId))
    .orderBy(runInRuns.id),
)

function runInFact(last: { outcome: (typeof runInRuns.$inferSelect)['outcome'] } | undefined) {
  if (!last) return 'none'
  if (last.outcome === null) return 'running'
  return last.outcome === 'passed' ? 'passed' : 'to-bench'
}

const labourOf = question(read =>
  read
    .select({
      repairId: labourEntries.repairId,
      endedAt: labourEntries.endedAt,
      task: labourEntries.task,
    })
    .from(labourEntries)
    .where(and(amongAsked(labourEntries.repairId), isNull(labourEntries.struckReason))),
)

const askedOf = question(read =>
  read
    .select({ repairId: findings.repairId, at: findings.at })
    .from(findings)
    .where(and(amongAsked(findings.repairId), eq(findings.needsWord, true), isNull(findings.struckReason))),
)

const collectedOf = question(read =>
  read
    .select({ repairId: handOvers.repairId, at: handOvers.at })
    .from(handOvers)
    .where(amongAsked(handOvers.repairId)),
)

const openWaitsOf = question(read =>
  read
    .select({ repairId: waits.repairId, reason: waits.reason })
    .from(waits)
    .where(and(amongAsked(waits.repairId), isNull(waits.untilAt))),
)

/** Rows told apart by their repair; an empty list where a repair has none. */
function byRepair<Row extends { readonly repairId: number }>(
  rows: readonly Row[],
): (id: number) => readonly Row[] {
  const groups = Map.groupBy(rows, row => row.repairId)
  return id => groups.get(id) ?? []
}

/** True for a finding that no word of the owner has followed. */
export const isUnanswered = (foundAt: string, lastWordAt: string): boolean => foundAt > lastWordAt

/** Everything on record about repairs that their standing depends on, by one question for each fact, however many repairs. */
function factsOf(read: Read, rows: readonly StandingRow[]): (repair: StandingRow) => RepairFacts {
  const ids = rows.map(({ id }) => id)
  const [estimated, said, asked] = [
    byRepair(estimatesOf(read).all(these(ids))),
    byRepair(wordsOf(read).all(these(ids))),
    byRepair(askedOf(read).all(these(ids))),
  ]
  const [worked, open, ran] = [
    byRepair(labourOf(read).all(these(ids))),
    byRepair(openWaitsOf(read).all(these(ids))),
    byRepair(runsOf(read).all(these(ids))),
  ]
  const [collected, invoiced] = [byRepair(collectedOf(read).all(these(ids))), invoicedOf(read, ids)]
  return ({ id, covered, estimateOnly, readyAt }) => {
    const words = said(id)
    const lastWordAt = words.at(-1)?.at ?? ''
    const estimate = estimated(id).at(-1)
    return {
      covered,
      estimateOnly,
      estimateWritten: estimate !== undefined,
      estimateSent: Boolean(estimate?.sentAt),
      word: wordOf(words),
      findingOpen: asked(id).some(({ at }) => isUnanswered(at, lastWordAt)),
      findingPriced: asked(id).every(({ at }) => estimate !== undefined && at <= estimate.writtenAt),
      // Looking a clock over comes before the estimate; it is not the work itself.
      workBegun: worked(id).some(({ task }) => task !== 'assess'),
      labourRunning: worked(id).some(({ endedAt }) => endedAt === null),
      waitsOpen: open(id).map(({ reason }) => reason),
      runIn: runInFact(ran(id).at(-1)),
      readyAt,
      collectedAt: collected(id)[0]?.at ?? null,
      invoiced: invoiced.has(id),
    }
  }
}

/** Where repairs stand by what is on record, asked for all of them at once. */
export function standingsOf(read: Read, rows: readonly StandingRow[]): ReadonlyMap<number, Standing> {
  const facts = factsOf(read, rows)
  return new Map(rows.map(repair => [repair.id, repairStanding(facts(repair))]))
}

/** Where the repair stands by what is on record. */
export const standingOf = (read: Read, repair: StandingRow): Standing =>
  repairStanding(factsOf(read, [repair])(repair))

/** The repair, when `act` is open to it now; otherwise a refusal with what blocks it, on `field`. */
export function repairOpenTo(tx: Read, repairId: number, act: RepairAct, field = ''): RepairRow {
  const repair = repairRow(tx, repairId)
  const blocked = standingOf(tx, repair).blocked.find(b => b.act === act)
  if (blocked) refuse(blocked.code, field)
  return repair
}

/** The repair while its clock is still in the shop. */
export function repairInShop(tx: Read, repairId: number): RepairRow {
  const repair = repairRow(tx, repairId)
  if (!isInShop(repair.stage)) refuse('repair.collected', 'repairId', { number: repair.number })
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
