import { and, desc, eq, isNull } from 'drizzle-orm'
import { phoneDigits } from '../../core/owner/contact.ts'
import type { Read, Write } from '../file/ledger.ts'
import { clockOwners, clocks, findEntries, ownerContacts, owners, repairs } from '../schema/index.ts'

type Kind = (typeof findEntries.$inferSelect)['kind']

/** What one subject can be found by: `words` from their beginnings, `marks` (serials, digits) from anywhere inside. */
interface FindEntry {
  readonly words: string
  readonly marks: string
}

const entryOf = (words: readonly string[], marks: readonly string[]): FindEntry => ({
  words: words.filter(Boolean).join(' '),
  marks: marks.filter(Boolean).join(' '),
})

function keep(
  tx: Write,
  kind: Kind,
  subjectId: number,
  words: readonly string[],
  marks: readonly string[],
): void {
  put(tx, kind, subjectId, entryOf(words, marks))
}

function put(tx: Write, kind: Kind, subjectId: number, entry: FindEntry): void {
  tx.insert(findEntries)
    .values({ kind, subjectId, ...entry })
    .onConflictDoUpdate({ target: [findEntries.kind, findEntries.subjectId], set: entry })
    .run()
}

/** A serial as anybody might type it: without spaces, dots and dashes. */
export const plainMark = (text: string): string => text.replace(/[^\p{L}\p{N}]/gu, '')

interface FoundOwner {
  readonly name: string
  readonly address: string
}

/** What an owner is found by: name, address, e-mail and the digits of the phones. */
export function ownerEntry(
  owner: FoundOwner,
  contacts: readonly { readonly kind: string; readonly value: string }[],
): FindEntry {
  const of = (kind: string) => contacts.filter(one => one.kind === kind).map(({ value }) => value)
  return entryOf([owner.name, owner.address, ...of('e-mail')], of('phone').flatMap(phoneDigits))
}

interface FoundClock {
  readonly maker: string
  readonly form: string
  readonly serial: string
  readonly marks: string
}

/** What a clock is found by: maker, form, marks and serial. */
export const clockEntry = ({ maker, form, serial, marks }: FoundClock): FindEntry =>
  entryOf([maker, form, serial, marks], [plainMark(serial)])

/** Enters an owner, by name, address, e-mail and the digits of the phones; and again the clocks and repairs that carry the name. */
export function findOwner(tx: Write, ownerId: number): void {
  const owner = tx.select().from(owners).where(eq(owners.id, ownerId)).get()
  if (!owner) return
  const contacts = tx
    .select()
    .from(ownerContacts)
    .where(and(eq(ownerContacts.ownerId, ownerId), isNull(ownerContacts.struckReason)))
    .all()
  if (owner.mergedIntoId) {
    tx.delete(findEntries)
      .where(and(eq(findEntries.kind, 'owner'), eq(findEntries.subjectId, ownerId)))
      .run()
    return
  }
  put(tx, 'owner', ownerId, ownerEntry(owner, contacts))
  for (const { id } of tx.select({ id: repairs.id }).from(repairs).where(eq(repairs.ownerId, ownerId)).all())
    findRepair(tx, id)
}

/** Enters a clock, by maker, form, marks and serial. */
export function findClock(tx: Write, clockId: number): void {
  const clock = tx.select().from(clocks).where(eq(clocks.id, clockId)).get()
  if (!clock) return
  put(tx, 'clock', clockId, clockEntry(clock))
}

/** Enters a repair, by its number, its owner and its clock's maker and serial. */
export function findRepair(tx: Write, repairId: number): void {
  const row = tx
    .select({
      number: repairs.number,
      name: owners.name,
      maker: clocks.maker,
      form: clocks.form,
      serial: clocks.serial,
    })
    .from(repairs)
    .innerJoin(owners, eq(owners.id, repairs.ownerId))
    .innerJoin(clocks, eq(clocks.id, repairs.clockId))
    .where(eq(repairs.id, repairId))
    .get()
  if (row)
    keep(tx, 'repair', repairId, [String(row.number), row.name, row.maker, row.form], [plainMark(row.serial)])
}

/** Enters a paper, by its number alone: its owner's name leads to it through the repair. */
export const findPaper = (
  tx: Write,
  { id, number }: { readonly id: number; readonly number: string },
): void => keep(tx, 'paper', id, [number], [plainMark(number)])

/** Who owns the clock now, if anyone does. */
export const currentOwnerId = (read: Read, clockId: number): number | undefined =>
  read
    .select({ ownerId: clockOwners.ownerId })
    .from(clockOwners)
    .where(and(eq(clockOwners.clockId, clockId), isNull(clockOwners.untilAt)))
    .orderBy(desc(clockOwners.id))
    .get()?.ownerId
