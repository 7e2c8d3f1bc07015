import { and, desc, eq, isNull } from 'drizzle-orm'
import type { Read, Write } from './ledger.ts'
import {
  clockOwners,
  clocks,
  documents,
  findEntries,
  ownerContacts,
  owners,
  repairs,
} from './schema/index.ts'

type Kind = (typeof findEntries.$inferSelect)['kind']

/** Keeps what one subject can be found by: `words` from their beginnings, `marks` (serials, digits) from anywhere inside. */
function keep(
  tx: Write,
  kind: Kind,
  subjectId: number,
  words: readonly string[],
  marks: readonly string[],
): void {
  const entry = { words: words.filter(Boolean).join(' '), marks: marks.filter(Boolean).join(' ') }
  tx.insert(findEntries)
    .values({ kind, subjectId, ...entry })
    .onConflictDoUpdate({ target: [findEntries.kind, findEntries.subjectId], set: entry })
    .run()
}

/** A serial as anybody might type it: without spaces, dots and dashes. */
export const plainMark = (text: string): string => text.replace(/[^\p{L}\p{N}]/gu, '')

/** Enters an owner, by name, address, e-mail and the digits of the phones; and again the clocks and repairs that carry the name. */
export function findOwner(tx: Write, ownerId: number): void {
  const owner = tx.select().from(owners).where(eq(owners.id, ownerId)).get()
  if (!owner) return
  const contacts = tx
    .select()
    .from(ownerContacts)
    .where(and(eq(ownerContacts.ownerId, ownerId), isNull(ownerContacts.struckReason)))
    .all()
  const phones = contacts.filter(c => c.kind === 'phone').map(c => plainMark(c.value))
  const mails = contacts.filter(c => c.kind === 'e-mail').map(c => c.value)
  if (owner.mergedIntoId) {
    tx.delete(findEntries)
      .where(and(eq(findEntries.kind, 'owner'), eq(findEntries.subjectId, ownerId)))
      .run()
    return
  }
  keep(tx, 'owner', ownerId, [owner.name, owner.address, ...mails], phones)
  for (const { id } of tx.select({ id: repairs.id }).from(repairs).where(eq(repairs.ownerId, ownerId)).all())
    findRepair(tx, id)
}

/** Enters a clock, by maker, form, marks and serial. */
export function findClock(tx: Write, clockId: number): void {
  const clock = tx.select().from(clocks).where(eq(clocks.id, clockId)).get()
  if (!clock) return
  keep(tx, 'clock', clockId, [clock.maker, clock.form, clock.serial, clock.marks], [plainMark(clock.serial)])
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

/** Enters a paper, by its number and its owner. */
export function findPaper(tx: Write, documentId: number): void {
  const row = tx
    .select({ number: documents.number, name: owners.name })
    .from(documents)
    .innerJoin(owners, eq(owners.id, documents.ownerId))
    .where(eq(documents.id, documentId))
    .get()
  if (row) keep(tx, 'paper', documentId, [row.number, row.name], [plainMark(row.number)])
}

/** Who owns the clock now, if anyone does. */
export const currentOwnerId = (read: Read, clockId: number): number | undefined =>
  read
    .select({ ownerId: clockOwners.ownerId })
    .from(clockOwners)
    .where(and(eq(clockOwners.clockId, clockId), isNull(clockOwners.untilAt)))
    .orderBy(desc(clockOwners.id))
    .get()?.ownerId
