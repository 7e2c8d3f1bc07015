import { and, asc, eq, isNull, or, sql } from 'drizzle-orm'
import { civilDateOf } from '../../core/calendar/zone.ts'
import { type Minor, minor } from '../../core/money/minor.ts'
import type { Settings } from '../../core/shop/settings.ts'
import { counterGroup, isLate, isUncollected } from '../../core/standing/counter-list.ts'
import { isWithoutWork, stages } from '../../core/standing/stages.ts'
import { isToSend } from '../../core/standing/standing.ts'
import type { Read } from '../file/ledger.ts'
import { repairsWithPartsIn } from '../rows/parts-in.ts'
import { amongAsked, question, these } from '../rows/question.ts'
import { readSettings } from '../rows/settings.ts'
import { clockInShort } from '../rules/clock-words.ts'
import { feeToldMinor } from '../rules/estimates.ts'
import { standingOf } from '../rules/facts.ts'
import { inShop } from '../rules/in-shop.ts'
import { belongings, clocks, documents, estimates, owners, repairs } from '../schema/index.ts'

/** What the owner has agreed to so far: the last agreed estimate and every agreed supplement; null while nothing is agreed. */
const agreed = sql<Minor | null>`(
  SELECT sum(e.total_minor) FROM estimates e
  WHERE e.repair_id = repairs.id
    AND EXISTS (SELECT 1 FROM go_aheads g WHERE g.estimate_id = e.id AND g.answer = 'go-ahead')
    AND (e.supplement = 1 OR e.version = (
      SELECT max(l.version) FROM estimates l JOIN go_aheads h ON h.estimate_id = l.id AND h.answer = 'go-ahead'
      WHERE l.repair_id = repairs.id AND l.supplement = 0)))`

const invoiced = sql<number>`EXISTS (SELECT 1 FROM documents d WHERE d.repair_id = repairs.id AND d.kind = 'invoice')`

/** The estimate last written for a repair. */
const lastEstimate = sql`${estimates.id} = (
  SELECT e.id FROM estimates e WHERE e.repair_id = ${repairs.id} ORDER BY e.version DESC LIMIT 1)`

const repairsInShop = question(read =>
  read
    .select({
      repair: {
        id: repairs.id,
        number: repairs.number,
        fault: repairs.fault,
        comebackOfId: repairs.comebackOfId,
        covered: repairs.covered,
        estimateOnly: repairs.estimateOnly,
        estimatedOn: repairs.estimatedOn,
        readyAt: repairs.readyAt,
        toldAt: repairs.toldAt,
        stage: repairs.stage,
        stageSince: repairs.stageSince,
        dueMinor: repairs.dueMinor,
      },
      owner: { id: owners.id, name: owners.name },
      clock: clockInShort,
      estimate: {
        version: estimates.version,
        totalMinor: estimates.totalMinor,
        sentAt: estimates.sentAt,
        validUntil: estimates.validUntil,
      },
      agreedMinor: agreed,
      invoiced,
    })
    .from(repairs)
    .innerJoin(owners, eq(owners.id, repairs.ownerId))
    .innerJoin(clocks, eq(clocks.id, repairs.clockId))
    .leftJoin(estimates, lastEstimate)
    .where(inShop)
    .orderBy(asc(repairs.stageSince), asc(repairs.id)),
)

type InShop = ReturnType<ReturnType<typeof repairsInShop>['all']>[number]

const received = question(read =>
  read
    .select({
      repairId: belongings.repairId,
      item: belongings.item,
      position: belongings.position,
      count: belongings.count,
      tag: belongings.tag,
    })
    .from(belongings)
    .where(
      and(amongAsked(belongings.repairId), eq(belongings.custody, 'received'), isNull(belongings.returnedAt)),
    ),
)

/** What is with the shop of every repair in `repairIds`. */
const belongingsHere = (read: Read, repairIds: readonly number[]) =>
  Map.groupBy(received(read).all(these(repairIds)), row => row.repairId)

/** What a repair not invoiced yet comes to: what is asked or agreed; where it goes home without work, the fee told for the estimate alone. */
function expectedMinor(read: Read, row: InShop, awaitingWord: boolean, settings: Settings): Minor | null {
  const { repair, agreedMinor, estimate } = row
  const asked = estimate?.totalMinor ?? null
  if (awaitingWord) return asked
  if (agreedMinor !== null) return agreedMinor
  return isWithoutWork(repair) ? feeToldMinor(read, repair.id, settings) : asked
}

interface Day {
  readonly today: string
  readonly settings: Settings
  /** Repairs whose parts are all there. */
  readonly partsIn: ReadonlySet<number>
}

/** What an amount is: billed and open; or, before there is a bill, agreed or asked, less what is paid. */
export type AmountIs = 'billed' | 'agreed' | 'asked'

/** What the owner will have to pay: what is due on the invoice; before it, what the repair is expected to come to, less what is paid. */
function toPay(
  read: Read,
  row: InShop,
  awaitingWord: boolean,
  settings: Settings,
): { toPayMinor: Minor; amountIs: AmountIs } {
  const { repair, invoiced, agreedMinor } = row
  const expected = invoiced ? null : expectedMinor(read, row, awaitingWord, settings)
  if (expected === null) return { toPayMinor: repair.dueMinor, amountIs: 'billed' }
  const isAgreed = agreedMinor !== null && !awaitingWord
  return { toPayMinor: minor(expected + repair.dueMinor), amountIs: isAgreed ? 'agreed' : 'asked' }
}

function counterRow(read: Read, row: InShop, { today, settings, partsIn }: Day) {
  const { repair, owner, clock } = row
  const { stage, estimatedOn, covered } = repair
  const waitingFor = stage === 'waiting' ? standingOf(read, repair).waitingFor : null
  const toSend = isToSend(
    { estimateWritten: row.estimate !== null, estimateSent: Boolean(row.estimate?.sentAt) },
    { stage, waitingFor },
  )
  const facts = {
    stage,
    comeback: repair.comebackOfId !== null,
    covered,
    waitingFor,
    toSend,
    partsIn: partsIn.has(repair.id),
    estimatedOn,
  }
  const sinceOn = civilDateOf(repair.stageSince, settings.place.timeZone)
  const group = counterGroup(facts, today)
  return {
    id: repair.id,
    number: repair.number,
    owner,
    clock,
    fault: repair.fault,
    group,
    stage,
    notches: stages[stage].notches,
    waitingFor,
    toSend,
    partsIn: facts.partsIn,
    covered,
    sinceOn,
    estimatedOn,
    late: isLate(facts, today),
    uncollected: isUncollected(stage, sinceOn, today, settings.collection.uncollectedDays),
    toldAt: repair.toldAt,
    estimate: row.estimate,
    ...toPay(read, row, group === 'awaiting-word', settings),
  }
}

/** Everything in the shop, grouped as the counter reads it, with what is to be collected summed up. */
export function counterView(read: Read, at: string) {
  const settings = readSettings(read)
  const today = civilDateOf(at, settings.place.timeZone)
  const day = { today, settings, partsIn: repairsWithPartsIn(read) }
  const found = repairsInShop(read).all()
  const here = belongingsHere(
    read,
    found.map(({ repair }) => repair.id),
  )
  const rows = found.map(row => ({
    ...counterRow(read, row, day),
    belongings: here.get(row.repair.id) ?? [],
  }))
  const collectable = rows.filter(row => row.group === 'to-collect')
  return {
    today,
    rows,
    toCollectMinor: minor(collectable.reduce((sum, row) => sum + Math.max(row.toPayMinor, 0), 0)),
    counts: {
      toCollect: collectable.length,
      awaitingWord: rows.filter(row => row.group === 'awaiting-word').length,
      late: rows.filter(row => row.late).length,
    },
  }
}

const papers = question(read =>
  read
    .select({
      id: documents.id,
      kind: documents.kind,
      number: documents.number,
      issuedOn: documents.issuedOn,
      totalMinor: documents.totalMinor,
      repairId: documents.repairId,
    })
    .from(documents)
    .where(
      or(
        amongAsked(documents.repairId),
        sql`${documents.id} IN (SELECT value FROM json_each(${sql.placeholder('also')}))`,
      ),
    )
    .orderBy(asc(documents.id)),
)

/** The documents of some repairs, and `also` those of these ids, in the order they were issued. */
export const documentsOf = (read: Read, repairIds: readonly number[], also: readonly number[] = []) =>
  papers(read).all({ ...these(repairIds), also: these(also).ids })
