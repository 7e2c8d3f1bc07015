import { createHash } from 'node:crypto'
import { and, asc, eq, isNull } from 'drizzle-orm'
import { civilDateOf } from '../../core/calendar/zone.ts'
import { whenGood } from '../../core/checked.ts'
import { type Minor, minor } from '../../core/money/minor.ts'
import { phoneText } from '../../core/owner/contact.ts'
import type { PaperClock, PaperContents, PaperHead, PaperOwner } from '../../core/papers/contents.ts'
import type { PaperKind } from '../../core/papers/kinds.ts'
import { type Checked, good } from '../../core/problems.ts'
import type { Settings } from '../../core/shop/settings.ts'
import { type TaxRow, taxRows } from '../../core/tax/rows.ts'
import type { Read, Write } from '../file/ledger.ts'
import { findPaper } from '../rows/find-entries.ts'
import { nextNumber } from '../rows/numbering.ts'
import type { Doing } from '../rows/verb.ts'
import { clocks, documents, documentTaxes, ownerContacts, owners } from '../schema/index.ts'
import { accepted } from './checked-in.ts'
import type { RepairRow } from './facts.ts'

export type DocumentRow = typeof documents.$inferSelect

/** The letter that leads the number of each series; claim checks and estimates are numbered by their repair. */
const letters: Partial<Record<PaperKind, string>> = {
  invoice: 'I',
  receipt: 'R',
  'credit-note': 'C',
  warranty: 'W',
}

const numberText = (kind: PaperKind, sequence: number, given?: string): string =>
  given ?? `${letters[kind] ?? ''}${String(sequence).padStart(4, '0')}`

/** The civil date of an act in the shop's own time zone. */
export const dayOfDoing = (doing: Doing, settings: Settings): string =>
  civilDateOf(doing.at, settings.place.timeZone)

const lines = (text: string): string[] =>
  text
    .split('\n')
    .map(line => line.trim())
    .filter(Boolean)

function paperOwner(read: Read, ownerId: number): PaperOwner {
  const owner = read.select().from(owners).where(eq(owners.id, ownerId)).get()
  const phone = read
    .select({ value: ownerContacts.value })
    .from(ownerContacts)
    .where(
      and(
        eq(ownerContacts.ownerId, ownerId),
        eq(ownerContacts.kind, 'phone'),
        isNull(ownerContacts.struckReason),
      ),
    )
    .orderBy(asc(ownerContacts.id))
    .get()
  return {
    name: owner?.name ?? '',
    addressLines: lines(owner?.address ?? ''),
    ...(phone ? { phone: phoneText(phone.value) } : {}),
    ...(owner?.country ? { country: owner.country } : {}),
  }
}

/** The clock as a paper tells it. */
export function paperClock(read: Read, clockId: number): PaperClock | undefined {
  const clock = read.select().from(clocks).where(eq(clocks.id, clockId)).get()
  if (!clock) return undefined
  const { form, maker, serial, marks, trains, duration, dial } = clock
  return {
    form,
    ...(trains === null ? {} : { trains }),
    ...(duration === 'unknown' ? {} : { duration }),
    ...(dial === 'other' || dial === 'unknown' ? {} : { dial }),
    ...(maker ? { maker } : {}),
    ...(serial ? { serial } : {}),
    ...(marks ? { marks } : {}),
  }
}

/** What heads every paper of this shop on this day; its number comes when it is issued. */
export function paperHead(
  read: Read,
  settings: Settings,
  issuedOn: string,
  about: { ownerId: number; repair?: RepairRow },
): Omit<PaperHead, 'number'> {
  const { name, addressLines, phone, email, taxNumber } = settings.shop
  const clock = about.repair ? paperClock(read, about.repair.clockId) : undefined
  return {
    shop: {
      name,
      addressLines,
      ...(phone ? { phone } : {}),
      ...(email ? { email } : {}),
      ...(taxNumber ? { taxNumber } : {}),
      country: settings.place.country,
    },
    locale: settings.place.locale,
    timeZone: settings.place.timeZone,
    currency: settings.place.currency,
    language: 'en',
    issuedOn,
    owner: paperOwner(read, about.ownerId),
    ...(clock ? { clock } : {}),
    ...(about.repair ? { repairNumber: String(about.repair.number) } : {}),
  }
}

/** What a document says before it has its number. */
export type Unnumbered = PaperContents extends infer C
  ? C extends PaperContents
    ? Omit<C, 'number'>
    : never
  : never

export interface Issue {
  readonly contents: Unnumbered
  readonly ownerId: number
  readonly repairId: number | null
  readonly correctsId?: number
  /** Where the number is not the series' own, as for `2231/1`. */
  readonly number?: string
}

interface Sums {
  readonly total: Minor
  readonly tax: Minor
  /** What each kind of line bears of each tax. */
  readonly taxes: readonly TaxRow[]
}

/** The sums a document's row keeps beside its contents. Problems: contents whose lines cannot be priced. */
export function sumsOf(contents: Unnumbered): Checked<Sums> {
  if ('priced' in contents)
    return whenGood(taxRows(contents), taxes =>
      good({ total: contents.priced.taxInclusive, tax: contents.priced.tax, taxes }),
    )
  return good({ total: contents.kind === 'receipt' ? contents.amount : minor(0), tax: minor(0), taxes: [] })
}

/** Issues a document: takes its number, freezes its contents, and never touches it again. */
export function issue(
  tx: Write,
  doing: Doing,
  { contents, ownerId, repairId, correctsId, number }: Issue,
): DocumentRow {
  const sequence = nextNumber(tx, contents.kind)
  const frozen = JSON.stringify({ ...contents, number: numberText(contents.kind, sequence, number) })
  const sums = accepted(sumsOf(contents))
  const row = tx
    .insert(documents)
    .values({
      kind: contents.kind,
      number: numberText(contents.kind, sequence, number),
      sequence,
      issuedAt: doing.at,
      issuedOn: contents.issuedOn,
      ownerId,
      repairId,
      correctsId: correctsId ?? null,
      currency: contents.currency,
      totalMinor: sums.total,
      taxMinor: sums.tax,
      contents: frozen,
      contentsHash: createHash('sha256').update(frozen).digest('hex'),
    })
    .returning()
    .get()
  for (const { code, rate, kind, taxable, tax } of sums.taxes)
    tx.insert(documentTaxes)
      .values({ documentId: row.id, code, rate, kind, taxableMinor: taxable, taxMinor: tax })
      .run()
  findPaper(tx, row)
  return row
}
