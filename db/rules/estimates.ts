import { and, asc, desc, eq, inArray, ne, sql } from 'drizzle-orm'
import { type Minor, minor, minorText } from '../../core/money/minor.ts'
import type { ClaimCheckContents } from '../../core/papers/contents.ts'
import {
  type InvoiceProposal,
  invoiceProposal,
  type ProposedLine,
} from '../../core/pricing/invoice-proposal.ts'
import { priced } from '../../core/pricing/price.ts'
import type { SaidOfCost } from '../../core/pricing/quoted-range.ts'
import type { Settings } from '../../core/shop/settings.ts'
import { lineTaxes, taxRules } from '../../core/shop/tax-rules.ts'
import { stagesThat, takesEstimate } from '../../core/standing/stages.ts'
import type { Read } from '../file/ledger.ts'
import { askedId, question } from '../rows/question.ts'
import * as s from '../schema/index.ts'
import { agreedLimit, askedLimit } from './agreed-limit.ts'
import { accepted } from './checked-in.ts'
import { clockInShort } from './clock-words.ts'
import {
  type EstimateRow,
  estimateEntries,
  estimateNumber,
  estimatePriced,
  onOneEstimate,
} from './estimate-rows.ts'
import type { RepairRow } from './facts.ts'
import type { partsUsedOn } from './parts-used.ts'

/** The last word on record of a repair, or on an estimate. */
const lastWordAbout = (about: typeof s.goAheads.repairId | typeof s.goAheads.estimateId) =>
  question(read =>
    read
      .select({ id: s.goAheads.id, answer: s.goAheads.answer })
      .from(s.goAheads)
      .where(eq(about, askedId))
      .orderBy(desc(s.goAheads.id))
      .limit(1),
  )

const lastWord = lastWordAbout(s.goAheads.repairId)
const lastOn = lastWordAbout(s.goAheads.estimateId)

const clockOf = question(read =>
  read
    .select({ repairNumber: s.repairs.number, stage: s.repairs.stage, clock: clockInShort })
    .from(s.repairs)
    .innerJoin(s.clocks, eq(s.clocks.id, s.repairs.clockId))
    .where(eq(s.repairs.id, askedId)),
)

/** One repair on an estimate: which clock, what it comes to, what the owner said of it, and the last word on that repair at all. */
function onEstimate(read: Read, row: EstimateRow) {
  const { id, repairId, supplement, totalMinor, highMinor } = row
  const about = clockOf(read).get({ id: repairId })
  if (!about) throw new Error(`estimate ${id} has no repair`)
  const answer = lastOn(read).get({ id })?.answer ?? null
  const lastWordId = lastWord(read).get({ id: repairId })?.id ?? null
  const limitMinor = askedLimit(read, row)
  const agreedMinor = agreedLimit(read, repairId)
  return {
    estimateId: id,
    repairId,
    ...about,
    supplement,
    totalMinor,
    highMinor,
    limitMinor,
    agreedMinor,
    answer,
    lastWordId,
  }
}

const versions = question(read =>
  read.select().from(s.estimates).where(eq(s.estimates.repairId, askedId)).orderBy(asc(s.estimates.version)),
)

/** Every version of the estimate of a repair, with the repairs that stand on it and what they come to together. */
export function estimatesOf(read: Read, repair: RepairRow, currency: string) {
  return versions(read)
    .all({ id: repair.id })
    .map(estimate => {
      const together = onOneEstimate(read, estimate).map(one => onEstimate(read, one))
      return {
        ...estimate,
        number: estimateNumber(read, estimate),
        lines: estimateEntries(read, estimate.id).map(({ line, ...made }) => ({ ...line, ...made })),
        priced: estimatePriced(read, estimate, currency),
        together,
        togetherMinor: minor(together.reduce((sum, one) => sum + one.totalMinor, 0)),
      }
    })
}

const othersOfOwner = question(read =>
  read
    .select({ id: s.repairs.id, number: s.repairs.number, fault: s.repairs.fault, clock: clockInShort })
    .from(s.repairs)
    .innerJoin(s.clocks, eq(s.clocks.id, s.repairs.clockId))
    .where(
      and(
        eq(s.repairs.ownerId, sql.placeholder('ownerId')),
        ne(s.repairs.id, askedId),
        inArray(s.repairs.stage, stagesThat(takesEstimate)),
      ),
    )
    .orderBy(asc(s.repairs.number)),
)

/** Other repairs of the same owner on which an estimate can be written now. */
export const repairsToJoin = (read: Read, { id, ownerId }: RepairRow) =>
  othersOfOwner(read).all({ id, ownerId })

const words = question(read =>
  read.select().from(s.goAheads).where(eq(s.goAheads.repairId, askedId)).orderBy(asc(s.goAheads.id)),
)

/** Every word of the owner on a repair, in order. */
export const wordsOf = (read: Read, repairId: number) => words(read).all({ id: repairId })

type Estimates = ReturnType<typeof estimatesOf>
type Words = ReturnType<typeof wordsOf>

/** The lines of every estimate the owner gave the go-ahead on, a later version in place of an earlier one. */
export function agreedLines(estimates: Estimates, words: Words): ProposedLine[] {
  const agreed = estimates.filter(e => words.some(w => w.estimateId === e.id && w.answer === 'go-ahead'))
  const base = agreed.filter(e => !e.supplement).at(-1)
  return agreed
    .filter(e => e.supplement || e === base)
    .flatMap(e => e.lines)
    .map(({ kind, description, quantity, unit, charge = '0', taxes, work = null, partId }) => ({
      kind,
      description,
      quantity,
      unit,
      charge,
      taxes,
      work,
      partId,
    }))
}

/** What the invoice of a repair starts from. */
export const invoiceStart = (
  agreed: readonly ProposedLine[],
  parts: ReturnType<typeof partsUsedOn>,
  mostMinor: Minor | null,
  settings: Settings,
): InvoiceProposal =>
  invoiceProposal(
    agreed,
    parts.rows.map(({ part, quantity, unitPriceMinor }) => ({
      partId: part.id,
      name: part.name,
      quantity,
      unitPriceMinor,
    })),
    {
      currency: settings.place.currency,
      tax: taxRules(settings.tax),
      taxesOfParts: settings.tax.byKind.part,
      mostMinor,
    },
  )

const claimCheck = question(read =>
  read
    .select({ contents: s.documents.contents })
    .from(s.documents)
    .where(and(eq(s.documents.repairId, askedId), eq(s.documents.kind, 'claim-check'))),
)

/** What was said of the cost when the clock was taken in, as its claim check has it. */
export function quotedAtTakeIn(read: Read, repairId: number): SaidOfCost {
  const check = claimCheck(read).get({ id: repairId })
  if (!check) return {}
  const { fee, low, high } = (JSON.parse(check.contents) as ClaimCheckContents).estimate
  return { fee, low, high }
}

/** What the fee told at the take-in comes to with its tax, in minor units; null where none was told. */
export function feeToldMinor(read: Read, repairId: number, settings: Settings): Minor | null {
  const { fee } = quotedAtTakeIn(read, repairId)
  if (!fee) return null
  const { currency } = settings.place
  const line = { kind: 'fee', quantity: '1', unit: minorText(fee, currency), charge: '0' } as const
  const lines = [{ ...line, taxes: lineTaxes({ kind: 'fee' }, settings.tax) }]
  return accepted(priced({ currency, tax: taxRules(settings.tax), lines })).taxInclusive
}
