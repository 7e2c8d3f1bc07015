import { and, asc, eq, isNull, lt, sql } from 'drizzle-orm'
import { civilDateOf } from '../../core/calendar/zone.ts'
import { cautionsFor, mustAcknowledge } from '../../core/cautions/cautions.ts'
import { forbidsWork } from '../../core/cautions/refused-work.ts'
import { minor } from '../../core/money/minor.ts'
import { phoneText } from '../../core/owner/contact.ts'
import { isLate, isUncollected } from '../../core/standing/counter-list.ts'
import { setUpAdviceFor } from '../../core/vocabulary/set-up-advice.ts'
import type { Read } from '../file/ledger.ts'
import { askedId, question } from '../rows/question.ts'
import { known } from '../rows/refusal.ts'
import { readSettings } from '../rows/settings.ts'
import { limitsOf } from '../rules/agreed-limit.ts'
import { accountHeld, repairBalance } from '../rules/balance.ts'
import { feePaidMinor } from '../rules/book-lines.ts'
import {
  agreedLines,
  estimatesOf,
  invoiceStart,
  quotedAtTakeIn,
  repairsToJoin,
  wordsOf,
} from '../rules/estimates.ts'
import { type RepairRow, repairRow, standingOf } from '../rules/facts.ts'
import { inShop } from '../rules/in-shop.ts'
import { latestInvoice } from '../rules/receipts.ts'
import { coverOf, warrantyAhead, warrantyOf } from '../rules/warranty-cover.ts'
import * as s from '../schema/index.ts'
import { benchCard } from './bench-card.ts'
import { conditionCompared, photographsOf } from './condition.ts'
import { documentsOf } from './counter.ts'
import { runsOf } from './run.ts'

const ownerOf = question(read => read.select().from(s.owners).where(eq(s.owners.id, askedId)))

const contactsOf = question(read =>
  read
    .select()
    .from(s.ownerContacts)
    .where(and(eq(s.ownerContacts.ownerId, askedId), isNull(s.ownerContacts.struckReason))),
)

/** A contact with what is shown of it: a telephone in groups of figures. */
export const contactShown = (contact: typeof s.ownerContacts.$inferSelect) => ({
  ...contact,
  shown: contact.kind === 'phone' ? phoneText(contact.value) : contact.value,
})

/** An owner with the contacts that still hold, the preferred one first. */
export function ownerWithContacts(read: Read, ownerId: number) {
  const owner = known(ownerOf(read).get({ id: ownerId }), 'owner.unknown', 'ownerId')
  const contacts = contactsOf(read)
    .all({ id: ownerId })
    .sort((a, b) => Number(b.preferred) - Number(a.preferred) || a.id - b.id)
  return { ...owner, contacts: contacts.map(contactShown) }
}

const visitsBefore = question(read =>
  read
    .select()
    .from(s.repairs)
    .where(and(eq(s.repairs.clockId, sql.placeholder('clockId')), lt(s.repairs.id, askedId))),
)

/** Earlier visits of the same clock, the latest first, with what their warranty says today. */
function earlierVisits(read: Read, repair: RepairRow, today: string) {
  return visitsBefore(read)
    .all({ id: repair.id, clockId: repair.clockId })
    .reverse()
    .map(earlier => ({
      id: earlier.id,
      number: earlier.number,
      takenInAt: earlier.takenInAt,
      fault: earlier.fault,
      stage: earlier.stage,
      cover: coverOf(read, earlier, today) ?? null,
    }))
}

/** The number of the repair this clock is in the shop for now. */
const numberHere = (read: Read, clockId: number): number | null =>
  repairHere(read).get({ id: clockId })?.number ?? null

const repairHere = question(read =>
  read
    .select({ number: s.repairs.number })
    .from(s.repairs)
    .where(and(eq(s.repairs.clockId, askedId), inShop)),
)

/** The repair a comeback comes back from, and what its warranty says of the day the clock came in, whatever the fault comes from. */
function comebackOf(read: Read, { comebackOfId, takenInAt }: RepairRow, timeZone: string) {
  if (comebackOfId === null) return null
  const earlier = repairRow(read, comebackOfId)
  return {
    number: earlier.number,
    cover: coverOf(read, earlier, civilDateOf(takenInAt, timeZone)) ?? null,
    exclusions: warrantyOf(read, earlier.id)?.exclusions ?? [],
  }
}

const paymentsOf = question(read =>
  read.select().from(s.payments).where(eq(s.payments.repairId, askedId)).orderBy(asc(s.payments.id)),
)

const writeOffsOf = question(read =>
  read.select().from(s.writeOffs).where(eq(s.writeOffs.repairId, askedId)).orderBy(asc(s.writeOffs.id)),
)

/** Money on a repair: what was paid, given back and given up, how it stands, and what is held on the owner's account. */
function moneyOf(read: Read, { id: repairId, ownerId }: RepairRow) {
  const balance = repairBalance(read, repairId)
  return {
    payments: paymentsOf(read).all({ id: repairId }),
    writeOffs: writeOffsOf(read).all({ id: repairId }),
    balance,
    billed: latestInvoice(read, repairId) !== undefined,
    heldMinor: minor(Math.max(-balance.due, 0)),
    accountMinor: accountHeld(read, ownerId),
  }
}

const numbered = question(read => read.select().from(s.repairs).where(eq(s.repairs.number, askedId)))

/** The repair of a number, or a refusal. */
export const repairByNumber = (read: Read, number: number): RepairRow =>
  known(numbered(read).get({ id: number }), 'repair.unknown', 'number')

const clockOf = question(read => read.select().from(s.clocks).where(eq(s.clocks.id, askedId)))

const belongingsOf = question(read =>
  read.select().from(s.belongings).where(eq(s.belongings.repairId, askedId)),
)

const messagesOf = question(read =>
  read.select().from(s.messages).where(eq(s.messages.repairId, askedId)).orderBy(asc(s.messages.id)),
)

const handOverOf = question(read => read.select().from(s.handOvers).where(eq(s.handOvers.repairId, askedId)))

/** Everything on record about one repair, by its number. */
export function repairView(read: Read, number: number, at: string) {
  const settings = readSettings(read)
  const today = civilDateOf(at, settings.place.timeZone)
  const repair = repairByNumber(read, number)
  const { id } = repair
  const clock = known(clockOf(read).get({ id: repair.clockId }), 'clock.unknown', 'clockId')
  const estimates = estimatesOf(read, repair, settings.place.currency)
  const words = wordsOf(read, repair.id)
  const limit = limitsOf(read, repair.id, settings)
  const bench = benchCard(read, repair, clock, at, settings.place.timeZone)
  const invoice = invoiceStart(agreedLines(estimates, words), bench.parts, limit.mostMinor, settings)
  const papersOfOthers = estimates.flatMap(({ documentId }) => documentId ?? [])
  return {
    repair,
    owner: ownerWithContacts(read, repair.ownerId),
    clock,
    cautions: cautionsFor(clock).map(code => ({
      code,
      mustAcknowledge: mustAcknowledge(code) || forbidsWork(code),
    })),
    // A clock that goes home as it came is not set up anew.
    setUpAdvice: repair.readyAt === null ? [] : setUpAdviceFor(clock),
    standing: standingOf(read, repair),
    late: isLate(repair, today),
    uncollected: isUncollected(
      repair.stage,
      civilDateOf(repair.stageSince, settings.place.timeZone),
      today,
      settings.collection.uncollectedDays,
    ),
    ...conditionCompared(read, repair),
    photographs: photographsOf(read, repair.id),
    belongings: belongingsOf(read).all({ id }),
    estimates,
    feePaidMinor: feePaidMinor(read, repair, settings.place.currency),
    words,
    limit,
    quoted: quotedAtTakeIn(read, repair.id),
    repairsToJoin: repairsToJoin(read, repair),
    invoice,
    invoiceLines: [...invoice.agreed, ...invoice.used],
    messages: messagesOf(read).all({ id }),
    documents: documentsOf(read, [repair.id], papersOfOthers),
    money: moneyOf(read, repair),
    warranty: {
      given: warrantyOf(read, repair.id) ?? null,
      cover: coverOf(read, repair, today) ?? null,
      ahead: warrantyAhead(settings, repair),
    },
    comeback: comebackOf(read, repair, settings.place.timeZone),
    clockHere: numberHere(read, clock.id),
    handOver: handOverOf(read).get({ id }) ?? null,
    earlier: earlierVisits(read, repair, today),
    bench,
    runs: runsOf(read, repair.id, clock, at, settings.place.timeZone),
  }
}

/** The numbers of all repairs, in order. */
export const repairNumbers = (read: Read): number[] =>
  read
    .select({ number: s.repairs.number })
    .from(s.repairs)
    .orderBy(asc(s.repairs.number))
    .all()
    .map(row => row.number)
