import { and, asc, eq, gt, isNull } from 'drizzle-orm'
import type { Card } from '../../core/exports/vcard.ts'
import type { Read } from '../file/ledger.ts'
import { byId } from '../rows/by-id.ts'
import { ownerContacts, owners } from '../schema/index.ts'

const lines = (text: string): string[] =>
  text
    .split('\n')
    .map(line => line.trim())
    .filter(Boolean)

const contactsOf = (read: Read, ownerId: number) =>
  read
    .select({ kind: ownerContacts.kind, value: ownerContacts.value, preferred: ownerContacts.preferred })
    .from(ownerContacts)
    .where(and(eq(ownerContacts.ownerId, ownerId), isNull(ownerContacts.struckReason)))
    .orderBy(asc(ownerContacts.id))
    .all()

/** A card for each owner; merged duplicates and struck out contacts left out, and the shop's own notes too. */
export function* ownerCards(read: Read): Generator<Card> {
  const rows = byId((after, limit) =>
    read
      .select()
      .from(owners)
      .where(and(gt(owners.id, after), isNull(owners.mergedIntoId)))
      .orderBy(asc(owners.id))
      .limit(limit)
      .all(),
  )
  for (const { id, name, address, country } of rows) {
    const contacts = contactsOf(read, id)
    yield {
      uid: `countwheel-owner-${id}`,
      name,
      addressLines: lines(address),
      country,
      phones: contacts.filter(({ kind }) => kind === 'phone'),
      emails: contacts.filter(({ kind }) => kind === 'e-mail'),
    }
  }
}
