import { eq } from 'drizzle-orm'
import { gather, gatherList, unless, whenGood } from '../../core/checked.ts'
import { type Minor, minor } from '../../core/money/minor.ts'
import { rangeProblems } from '../../core/pricing/quoted-range.ts'
import { bad, type Checked, type Problem, problem, problemsUnder } from '../../core/problems.ts'
import type { Settings } from '../../core/shop/settings.ts'
import type { Way } from '../../core/vocabulary/work.ts'
import type { Write } from '../file/ledger.ts'
import { type Estimated, estimateContents } from '../papers/estimate.ts'
import { refuse, refuseAny } from '../rows/refusal.ts'
import { readSettings } from '../rows/settings.ts'
import { type Doing, verb } from '../rows/verb.ts'
import { accepted, amountIn } from '../rules/checked-in.ts'
import {
  type EstimateRow,
  estimateNumber,
  estimateRow,
  keepLines,
  lastVersion,
  onOneEstimate,
} from '../rules/estimate-rows.ts'
import { type RepairRow, repairInShop, repairOpenTo, settle } from '../rules/facts.ts'
import { dayOfDoing, issue } from '../rules/issue.ts'
import type { LineEntry } from '../rules/line-entry.ts'
import { checkedLines, type PricedLines } from '../rules/price-lines.ts'
import { estimates } from '../schema/index.ts'

/** What is written of one repair: its lines, and an upper end where the work cannot be known before the strip. */
export interface SectionEntry {
  readonly repairId: number
  readonly supplement: boolean
  readonly lines: readonly LineEntry[]
  readonly high: string | null
}

/** An estimate as written; further repairs of the same owner may stand on it, each with lines of its own. */
export interface WriteEstimate extends SectionEntry {
  readonly remark: string
  readonly others: readonly SectionEntry[]
  /** The last version of this repair that the writer has seen, where that is to be checked. */
  readonly seen: { readonly last: number | null } | null
}

interface Section {
  readonly repair: RepairRow
  readonly entry: SectionEntry
  readonly sums: PricedLines
  readonly highMinor: Minor | null
}

/** Where the fields of a repair's section stand in the request, the first one's at the top. */
const pathOf = (index: number): string => (index === 0 ? '' : `others[${index - 1}]`)

/** The repairs to be written on, each once and all of one owner. */
function openRepairs(tx: Write, entries: readonly SectionEntry[]): RepairRow[] {
  const open = entries.map(({ repairId }, i) =>
    repairOpenTo(tx, repairId, 'write-estimate', i === 0 ? '' : `${pathOf(i)}.repairId`),
  )
  const wrong = open.flatMap(({ id, number, ownerId }, i): Problem[] => {
    const field = `${pathOf(i)}.repairId`
    if (open.findIndex(one => one.id === id) < i) return [problem('estimate.repairTwice', field, { number })]
    return ownerId === open[0]?.ownerId ? [] : [problem('estimate.otherOwner', field, { number })]
  })
  refuseAny(wrong)
  return open
}

function checkedSection(
  tx: Write,
  repair: RepairRow,
  entry: SectionEntry,
  settings: Settings,
): Checked<Section> {
  const parts = gather({
    sums: checkedLines(tx, repair, entry.lines, settings),
    highMinor: amountIn(settings, entry.high, 'high'),
  })
  return whenGood(parts, ({ sums, highMinor }) =>
    unless(rangeProblems(sums.priced.taxInclusive, highMinor, 'high'), () => ({
      repair,
      entry,
      sums,
      highMinor,
    })),
  )
}

const under = (path: string, checked: Checked<Section>): Checked<Section> =>
  checked.ok ? checked : bad(problemsUnder(path, checked.problems))

function refuseUnseen(tx: Write, { repairId, seen }: WriteEstimate): void {
  const last = lastVersion(tx, repairId)
  if (seen && last && last.version !== seen.last)
    refuse('estimate.writtenMeanwhile', '', { number: estimateNumber(tx, last) })
}

function keepSection(tx: Write, { repair, entry, sums, highMinor }: Section, about: SectionFacts) {
  const version = (lastVersion(tx, repair.id)?.version ?? 0) + 1
  const { supplement, lines } = entry
  const totalMinor = sums.priced.taxInclusive
  const row = tx
    .insert(estimates)
    .values({ ...about, repairId: repair.id, version, supplement, tax: sums.tax, highMinor, totalMinor })
    .returning()
    .get()
  keepLines(tx, row.id, sums.lines, lines)
  settle(tx, repair.id, about.writtenAt)
  return row
}

type SectionFacts = Pick<EstimateRow, 'writtenAt' | 'remark' | 'leadId'>

/**
 * Writes an estimate: a new version beside the earlier ones, priced at once, for one repair or for several of one owner; it
 * binds nobody until it is sent.
 */
export const writeEstimate = verb('estimates.write', (tx, input: WriteEstimate, doing) => {
  const settings = readSettings(tx)
  const entries = [input, ...input.others]
  const repairs = openRepairs(tx, entries)
  refuseUnseen(tx, input)
  const [first, ...others] = accepted(
    gatherList(
      repairs.map((repair, i) => under(pathOf(i), checkedSection(tx, repair, entries[i] ?? input, settings))),
    ),
  )
  if (!first) throw new Error('an estimate without a repair')
  const about = { writtenAt: doing.at, remark: input.remark }
  const lead = keepSection(tx, first, { ...about, leadId: null })
  const beside = others.map(other => keepSection(tx, other, { ...about, leadId: lead.id }))
  const together = (of: (one: Section) => Minor) =>
    minor([first, ...others].reduce((sum, one) => sum + of(one), 0))
  return {
    subject: { kind: 'estimate', id: lead.id },
    result: {
      id: lead.id,
      number: estimateNumber(tx, lead),
      totalMinor: together(({ sums }) => sums.priced.taxInclusive),
      taxMinor: together(({ sums }) => sums.priced.tax),
      others: beside.map(({ id, repairId }) => ({ id, repairId })),
    },
  }
})

/** What stands on the estimate, as it can be sent; refuses one that was sent, and one whose repair has a newer version. */
function estimated(tx: Write, doing: Doing, estimateId: number): [Estimated, ...Estimated[]] {
  const row = estimateRow(tx, estimateId)
  if (row.sentAt) refuse('estimate.sent', 'estimateId')
  const [first, ...others] = onOneEstimate(tx, row).map(estimate => {
    const repair = repairInShop(tx, estimate.repairId)
    const last = lastVersion(tx, repair.id)
    if (last && last.version > estimate.version)
      refuse('estimate.newer', 'estimateId', { number: estimateNumber(tx, last), repair: repair.number })
    return { estimate, repair }
  })
  if (!first) throw new Error(`estimate ${estimateId} at ${doing.at} has no rows`)
  return [first, ...others]
}

/** Sends an estimate, with every repair on it: freezes it as a document, dates its validity. It can be sent once. */
export const sendEstimate = verb('estimates.send', (tx, input: { estimateId: number; way: Way }, doing) => {
  const settings = readSettings(tx)
  const all = estimated(tx, doing, input.estimateId)
  const [{ estimate, repair }] = all
  const contents = estimateContents(tx, settings, dayOfDoing(doing, settings), all)
  const number = estimateNumber(tx, estimate)
  const document = issue(tx, doing, { contents, ownerId: repair.ownerId, repairId: repair.id, number })
  const sent = {
    sentAt: doing.at,
    sentWay: input.way,
    documentId: document.id,
    validUntil: contents.validUntil ?? null,
  }
  for (const one of all) {
    tx.update(estimates).set(sent).where(eq(estimates.id, one.estimate.id)).run()
    settle(tx, one.repair.id, doing.at)
  }
  return {
    subject: { kind: 'estimate', id: estimate.id },
    result: { documentId: document.id, number, totalMinor: document.totalMinor },
  }
})
