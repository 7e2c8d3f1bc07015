import { and, desc, eq, gt, isNotNull } from 'drizzle-orm'
import { gather, gatherList } from '../../core/checked.ts'
import type { Minor } from '../../core/money/minor.ts'
import { bad, type Checked, good, type Problem, problem, problemsUnder } from '../../core/problems.ts'
import type { Way } from '../../core/vocabulary/work.ts'
import type { Write } from '../file/ledger.ts'
import { readSettings } from '../rows/settings.ts'
import { verb } from '../rows/verb.ts'
import { askedLimit, lastAgreed } from '../rules/agreed-limit.ts'
import { accepted, amountIn } from '../rules/checked-in.ts'
import { type EstimateRow, estimateNumber, estimateRow, leadId } from '../rules/estimate-rows.ts'
import { type RepairRow, repairOpenTo, settle } from '../rules/facts.ts'
import { estimates, goAheads } from '../schema/index.ts'

/** What the owner says of one repair on an estimate. */
export interface Answered {
  readonly estimateId: number
  readonly answer: 'go-ahead' | 'declined'
  /** The sum the owner names for the whole repair, which is then not passed; else the upper end of the estimate, with what was agreed before a supplement. */
  readonly limit: string | null
  /** The last word on this repair that the writer has seen, by its id, where that is to be checked. */
  readonly seen: { readonly last: number | null } | null
}

/** The owner's word on an estimate that was sent: on one repair, and on others that stand on the same estimate. */
export interface RecordWord extends Answered {
  readonly who: string
  readonly way: Way
  readonly remark: string
  readonly others: readonly Answered[]
}

interface Heard {
  readonly repair: RepairRow
  readonly estimate: EstimateRow
  readonly answer: Answered['answer']
  readonly limit: Limit | null
}

interface Limit {
  readonly limitMinor: Minor
  /** It is a sum of the owner's own: said now, or for what a supplement adds to. */
  readonly limitNamed: boolean
}

const newerSent = (tx: Write, { repairId, version }: EstimateRow): EstimateRow | undefined =>
  tx
    .select()
    .from(estimates)
    .where(
      and(
        eq(estimates.repairId, repairId),
        gt(estimates.version, version),
        eq(estimates.supplement, false),
        isNotNull(estimates.sentAt),
      ),
    )
    .orderBy(desc(estimates.version))
    .get()

function unseen(tx: Write, { seen }: Answered, repairId: number): Problem[] {
  const last = tx
    .select()
    .from(goAheads)
    .where(eq(goAheads.repairId, repairId))
    .orderBy(desc(goAheads.id))
    .get()
  return !seen || !last || last.id === seen.last
    ? []
    : [problem('word.recordedMeanwhile', '', { who: last.who, answer: last.answer })]
}

function limitOf(tx: Write, { answer, limit }: Answered, estimate: EstimateRow): Checked<Limit | null> {
  if (answer === 'declined') return good(null)
  const said = amountIn(readSettings(tx), limit, 'limit')
  if (!said.ok) return said
  if (said.value !== null) return good({ limitMinor: said.value, limitNamed: true })
  const limitNamed = estimate.supplement && lastAgreed(tx, estimate.repairId)?.named === true
  return good({ limitMinor: askedLimit(tx, estimate), limitNamed })
}

function heard(tx: Write, said: Answered): Checked<Heard> {
  const estimate = estimateRow(tx, said.estimateId)
  if (!estimate.sentAt) return bad([problem('estimate.notSent', 'estimateId')])
  const repair = repairOpenTo(tx, estimate.repairId, 'record-word')
  const newer = newerSent(tx, estimate)
  const late =
    newer &&
    problem('estimate.newer', 'estimateId', { number: estimateNumber(tx, newer), repair: repair.number })
  const stale = [...(late ? [late] : []), ...unseen(tx, said, repair.id)]
  return stale.length > 0
    ? bad(stale)
    : gather({
        repair: good(repair),
        estimate: good(estimate),
        answer: good(said.answer),
        limit: limitOf(tx, said, estimate),
      })
}

/** Another repair's answer counts only once, and only where it stands on the same estimate. */
function heardBeside(tx: Write, { estimateId, others }: RecordWord, index: number): Checked<Heard> {
  const path = `others[${index}]`
  const said = others[index]
  if (!said) throw new Error(`no answer ${index}`)
  const before = [estimateId, ...others.slice(0, index).map(one => one.estimateId)]
  const same = leadId(estimateRow(tx, said.estimateId)) === leadId(estimateRow(tx, estimateId))
  if (!same || before.includes(said.estimateId))
    return bad([problem('estimate.notTogether', `${path}.estimateId`)])
  const one = heard(tx, said)
  return one.ok ? one : bad(problemsUnder(path, one.problems))
}

/** Records the owner's word, one record for each repair: who, how, when, and up to what sum. */
export const recordWord = verb('estimates.recordWord', (tx, input: RecordWord, doing) => {
  const { who, way, remark, others } = input
  const all = accepted(gatherList([heard(tx, input), ...others.map((_, i) => heardBeside(tx, input, i))]))
  const results = all.map(({ repair, estimate, answer, limit }) => {
    const said = { answer, who, way, limitMinor: null, ...limit, remark }
    tx.insert(goAheads)
      .values({
        repairId: repair.id,
        estimateId: estimate.id,
        at: doing.at,
        personId: doing.personId,
        ...said,
      })
      .run()
    const { stage } = settle(tx, repair.id, doing.at)
    return { repairId: repair.id, limitMinor: said.limitMinor, stage }
  })
  const [first, ...beside] = results
  if (!first) throw new Error('a word on nothing')
  const { repairId, limitMinor, stage } = first
  return { subject: { kind: 'repair', id: repairId }, result: { limitMinor, stage, others: beside } }
})
