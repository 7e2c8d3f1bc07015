import { and, eq, isNull } from 'drizzle-orm'
import type { ClockSize } from '../../core/measures/measures.ts'
import { type ContactEntry, keptContact } from '../../core/owner/contact.ts'
import type { Read, Write } from '../file/ledger.ts'
import { currentOwnerId, findClock, findOwner } from '../rows/find-entries.ts'
import { known, refuse } from '../rows/refusal.ts'
import { clockRow, ownerRow } from '../rows/register-rows.ts'
import { refuseUnseen } from '../rows/seen.ts'
import { readSettings } from '../rows/settings.ts'
import { verb } from '../rows/verb.ts'
import { accepted } from '../rules/checked-in.ts'
import {
  type ClockEntry,
  enterClock,
  enterOwner,
  type NewClock,
  type NewOwner,
  type OwnerEntry,
} from '../rules/register-entries.ts'
import { clockOwners, clocks, ownerContacts, owners, repairs } from '../schema/index.ts'

/** Enters an owner, unless somebody on record may be the same and was not looked at. */
export const addOwner = verb('register.addOwner', (tx, input: NewOwner, doing) => {
  const id = enterOwner(tx, input, doing.at)
  return { subject: { kind: 'owner', id }, result: { id } }
})

/** A record written anew, with what of it the writer has seen. */
type Changed<Entry> = Entry & { readonly seen: Entry | null }

/** Changes an owner's entry, unless somebody else has since it was seen. */
export const changeOwner = verb(
  'register.changeOwner',
  (tx, input: Changed<OwnerEntry> & { ownerId: number }) => {
    const { ownerId, seen, ...entry } = input
    refuseUnseen(seen, ownerRow(tx, ownerId))
    tx.update(owners).set(entry).where(eq(owners.id, ownerId)).run()
    findOwner(tx, ownerId)
    return { subject: { kind: 'owner', id: ownerId }, result: { id: ownerId } }
  },
)

const onlyPreferred = (tx: Write, ownerId: number) =>
  tx.update(ownerContacts).set({ preferred: false }).where(eq(ownerContacts.ownerId, ownerId)).run()

export const addContact = verb(
  'register.addContact',
  (tx, input: { ownerId: number; contact: ContactEntry }) => {
    const { ownerId, contact } = input
    ownerRow(tx, ownerId)
    const kept = accepted(keptContact(contact, readSettings(tx).place.country, 'contact'))
    if (kept.preferred) onlyPreferred(tx, ownerId)
    const { id } = tx
      .insert(ownerContacts)
      .values({ ownerId, ...kept })
      .returning()
      .get()
    findOwner(tx, ownerId)
    return { subject: { kind: 'owner', id: ownerId }, result: { id } }
  },
)

const contactRow = (read: Read, id: number) => {
  const contact = known(
    read.select().from(ownerContacts).where(eq(ownerContacts.id, id)).get(),
    'contact.unknown',
    'contactId',
  )
  return contact.struckReason ? refuse('entry.struck', 'contactId') : contact
}

export interface PreferContact {
  readonly contactId: number
  /** The contact that was preferred as the writer saw it; null in older day books. */
  readonly seen: { readonly preferredId: number | null } | null
}

const preferredOf = (read: Read, ownerId: number): number | null =>
  read
    .select({ id: ownerContacts.id })
    .from(ownerContacts)
    .where(and(eq(ownerContacts.ownerId, ownerId), eq(ownerContacts.preferred, true)))
    .get()?.id ?? null

/** Marks a contact as the way the owner prefers, in place of any other. */
export const preferContact = verb('register.preferContact', (tx, input: PreferContact) => {
  const { id, ownerId } = contactRow(tx, input.contactId)
  refuseUnseen(input.seen, { preferredId: preferredOf(tx, ownerId) })
  onlyPreferred(tx, ownerId)
  tx.update(ownerContacts).set({ preferred: true }).where(eq(ownerContacts.id, id)).run()
  return { subject: { kind: 'owner', id: ownerId }, result: { id } }
})

/** Strikes out a contact that is wrong or no longer so; it stays legible with its reason. */
export const strikeContact = verb(
  'register.strikeContact',
  (tx, input: { contactId: number; reason: string }) => {
    const contact = contactRow(tx, input.contactId)
    tx.update(ownerContacts)
      .set({ struckReason: input.reason, preferred: false })
      .where(eq(ownerContacts.id, contact.id))
      .run()
    findOwner(tx, contact.ownerId)
    return { subject: { kind: 'owner', id: contact.ownerId }, result: { id: contact.id } }
  },
)

/**
 * Marks one owner as the same person as another. The duplicate's contacts, clocks and repairs come over; its own row stays,
 * pointing to the owner kept, and its papers still say what they said.
 */
export const mergeOwners = verb(
  'register.mergeOwners',
  (tx, input: { ownerId: number; intoId: number }, doing) => {
    if (input.ownerId === input.intoId) refuse('owner.same', 'intoId')
    ownerRow(tx, input.ownerId)
    ownerRow(tx, input.intoId, 'intoId')
    tx.update(owners).set({ mergedIntoId: input.intoId }).where(eq(owners.id, input.ownerId)).run()
    tx.update(ownerContacts)
      .set({ ownerId: input.intoId, preferred: false })
      .where(eq(ownerContacts.ownerId, input.ownerId))
      .run()
    tx.update(repairs).set({ ownerId: input.intoId }).where(eq(repairs.ownerId, input.ownerId)).run()
    for (const { clockId } of clocksOf(tx, input.ownerId)) passTo(tx, clockId, input.intoId, doing.at)
    findOwner(tx, input.ownerId)
    findOwner(tx, input.intoId)
    return { subject: { kind: 'owner', id: input.intoId }, result: { id: input.intoId } }
  },
)

const clocksOf = (tx: Write, ownerId: number) =>
  tx
    .select({ clockId: clockOwners.clockId })
    .from(clockOwners)
    .where(and(eq(clockOwners.ownerId, ownerId), isNull(clockOwners.untilAt)))
    .all()

function passTo(tx: Write, clockId: number, ownerId: number, at: string): void {
  tx.update(clockOwners)
    .set({ untilAt: at })
    .where(and(eq(clockOwners.clockId, clockId), isNull(clockOwners.untilAt)))
    .run()
  tx.insert(clockOwners).values({ clockId, ownerId, fromAt: at }).run()
}

export const addClock = verb('register.addClock', (tx, input: NewClock & { ownerId: number }, doing) => {
  const { ownerId, ...clock } = input
  ownerRow(tx, ownerId)
  const id = enterClock(tx, clock, ownerId, doing.at)
  return { subject: { kind: 'clock', id }, result: { id } }
})

/** Changes how a clock is described, unless somebody else has since it was seen. */
export const changeClock = verb(
  'register.changeClock',
  (tx, input: Changed<ClockEntry> & { clockId: number }) => {
    const { clockId, seen, ...clock } = input
    refuseUnseen(seen, clockRow(tx, clockId))
    tx.update(clocks).set(clock).where(eq(clocks.id, clockId)).run()
    findClock(tx, clockId)
    return { subject: { kind: 'clock', id: clockId }, result: { id: clockId } }
  },
)

/** Writes down how large and heavy a clock is, unless somebody else has since it was seen. */
export const measureClock = verb(
  'register.measureClock',
  (tx, input: Changed<ClockSize> & { clockId: number }) => {
    const { clockId, seen, ...size } = input
    refuseUnseen(seen, clockRow(tx, clockId))
    tx.update(clocks).set(size).where(eq(clocks.id, clockId)).run()
    return { subject: { kind: 'clock', id: clockId }, result: { id: clockId } }
  },
)

/** Records that a clock has a new owner; its history stays with it. */
export const passClock = verb(
  'register.passClock',
  (tx, input: { clockId: number; ownerId: number; seen: { ownerId: number } | null }, doing) => {
    clockRow(tx, input.clockId)
    ownerRow(tx, input.ownerId)
    const ownerId = currentOwnerId(tx, input.clockId)
    refuseUnseen(input.seen, { ownerId: ownerId ?? null })
    if (ownerId !== input.ownerId) passTo(tx, input.clockId, input.ownerId, doing.at)
    return { subject: { kind: 'clock', id: input.clockId }, result: { id: input.clockId } }
  },
)
