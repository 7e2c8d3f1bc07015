import { and, eq } from 'drizzle-orm'
import { civilDateOf } from '../../core/calendar/zone.ts'
import { minorText } from '../../core/money/minor.ts'
import type { WarrantyContents } from '../../core/papers/contents.ts'
import { lineKinds } from '../../core/pricing/kinds/index.ts'
import { type Problem, problem } from '../../core/problems.ts'
import type { Settings } from '../../core/shop/settings.ts'
import { setUpAdviceFor } from '../../core/vocabulary/set-up-advice.ts'
import { warrantyTerm } from '../../core/warranty/term.ts'
import type { Write } from '../file/ledger.ts'
import { Refusal, refuseAny } from '../rows/refusal.ts'
import { clockRow } from '../rows/register-rows.ts'
import { readSettings } from '../rows/settings.ts'
import { type Doing, verb } from '../rows/verb.ts'
import { repairBalance } from '../rules/balance.ts'
import { type RepairRow, repairOpenTo, settle } from '../rules/facts.ts'
import { frozenContents } from '../rules/frozen-papers.ts'
import { type DocumentRow, dayOfDoing, issue, paperHead } from '../rules/issue.ts'
import { warrantyAhead } from '../rules/warranty-cover.ts'
import { belongings, documents, handOvers, owners, warranties } from '../schema/index.ts'

/** What is done when a clock leaves: every belonging ticked back or accounted for, the name that signed, money settled. */
export interface HandOver {
  readonly repairId: number
  readonly toName: string
  /** What authority and identification were shown, where it is not the owner who collects. */
  readonly authority: string
  readonly belongings: readonly { readonly id: number; readonly returned: boolean; readonly reason: string }[]
  readonly unpaidReason: string
  readonly adviceGiven: boolean
}

function belongingProblems(tx: Write, input: HandOver): Problem[] {
  const received = tx
    .select()
    .from(belongings)
    .where(and(eq(belongings.repairId, input.repairId), eq(belongings.custody, 'received')))
    .all()
  const strangers = input.belongings.flatMap((entry, i) =>
    received.some(b => b.id === entry.id) ? [] : [problem('belonging.unknown', `belongings[${i}].id`)],
  )
  const missing = received.flatMap(b => {
    const index = input.belongings.findIndex(entry => entry.id === b.id)
    const entry = input.belongings[index]
    if (entry && (entry.returned || entry.reason)) return []
    return [problem('belonging.unaccounted', `belongings[${index}].returned`, { item: b.tag || b.item })]
  })
  return [...strangers, ...missing]
}

function handOverProblems(tx: Write, input: HandOver, repair: RepairRow, currency: string): Problem[] {
  const { due } = repairBalance(tx, repair.id)
  const owner = tx.select({ name: owners.name }).from(owners).where(eq(owners.id, repair.ownerId)).get()
  const another = owner?.name.trim().toLowerCase() !== input.toName.trim().toLowerCase()
  return [
    ...belongingProblems(tx, input),
    ...(due > 0 && !input.unpaidReason
      ? [problem('handOver.unpaid', 'unpaidReason', { due: minorText(due, currency) })]
      : []),
    ...(another && !input.authority ? [problem('handOver.authority', 'authority')] : []),
  ]
}

const lastInvoice = (tx: Write, repairId: number): DocumentRow | undefined =>
  tx
    .select()
    .from(documents)
    .where(and(eq(documents.repairId, repairId), eq(documents.kind, 'invoice')))
    .orderBy(documents.id)
    .all()
    .at(-1)

function warrantyStart(
  repair: RepairRow,
  settings: Settings,
  today: string,
  invoice: DocumentRow | undefined,
): string {
  const { startsOn } = settings.warranty
  if (startsOn === 'invoice') return invoice?.issuedOn ?? today
  if (startsOn === 'ready' && repair.readyAt) return civilDateOf(repair.readyAt, settings.place.timeZone)
  return today
}

/** What was done, in the words of the invoice’s lines; a fee is no work. */
const workDone = (invoice: DocumentRow | undefined): string[] => {
  const contents = invoice ? frozenContents(invoice) : undefined
  return contents?.kind === 'invoice'
    ? contents.lines.filter(({ kind }) => lineKinds[kind].tellsWork).map(({ description }) => description)
    : []
}

/** Gives the warranty that the shop's terms promise for this scope, if any; a covered comeback goes on under the first one. */
function giveWarranty(tx: Write, doing: Doing, settings: Settings, repair: RepairRow): DocumentRow | null {
  const term = warrantyAhead(settings, repair)
  if (!term) return null
  const { convention, onComeback, pausesInShop, exclusions } = settings.warranty
  const today = dayOfDoing(doing, settings)
  const invoice = lastInvoice(tx, repair.id)
  const startOn = warrantyStart(repair, settings, today, invoice)
  const reckoned = warrantyTerm({ start: startOn, ...term, convention, on: startOn })
  if (!reckoned.ok) throw new Refusal(reckoned.problems)
  const { lastDay } = reckoned.value
  const clock = clockRow(tx, repair.clockId)
  const contents: Omit<WarrantyContents, 'number'> = {
    ...paperHead(tx, settings, today, { ownerId: repair.ownerId, repair }),
    kind: 'warranty',
    scope: repair.scope,
    startOn,
    lastDay,
    exclusions,
    work: workDone(invoice),
    advice: setUpAdviceFor(clock),
    ...(invoice ? { invoiceNumber: invoice.number } : {}),
  }
  const document = issue(tx, doing, { contents, ownerId: repair.ownerId, repairId: repair.id })
  tx.insert(warranties)
    .values({
      repairId: repair.id,
      documentId: document.id,
      scope: repair.scope,
      startOn,
      ...term,
      convention,
      onComeback,
      pausesInShop,
      lastDay,
      exclusions: [...exclusions],
    })
    .run()
  return document
}

/** Hands a clock over. Refuses, all reasons at once, while a belonging is unaccounted for, money is owed without a reason, or a stranger collects without authority. */
export const handOver = verb('counter.handOver', (tx, input: HandOver, doing) => {
  const settings = readSettings(tx)
  const repair = repairOpenTo(tx, input.repairId, 'hand-over')
  refuseAny(handOverProblems(tx, input, repair, settings.place.currency))
  for (const { id, returned, reason } of input.belongings)
    tx.update(belongings)
      .set({ returnedAt: returned ? doing.at : null, unreturnedReason: reason })
      .where(eq(belongings.id, id))
      .run()
  const warranty = giveWarranty(tx, doing, settings, repair)
  const { toName, authority, unpaidReason, adviceGiven } = input
  tx.insert(handOvers)
    .values({
      repairId: repair.id,
      at: doing.at,
      personId: doing.personId,
      toName,
      authority,
      unpaidReason,
      adviceGiven,
    })
    .run()
  settle(tx, repair.id, doing.at)
  return {
    subject: { kind: 'repair', id: repair.id },
    result: {
      id: repair.id,
      number: repair.number,
      warrantyId: warranty?.id ?? null,
      warrantyNumber: warranty?.number ?? null,
    },
  }
})
