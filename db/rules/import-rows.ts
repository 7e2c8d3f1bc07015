import { gatherList } from '../../core/checked.ts'
import { type Contact, type ContactEntry, keptContact } from '../../core/owner/contact.ts'
import type { Checked } from '../../core/problems.ts'
import type { ClockEntry, ListedOwner } from './register-entries.ts'

/** One checked line of an existing shop's list. */
export interface ImportRow {
  /** Where it stands in the file, counted from 1. */
  readonly line: number
  /** The owner on record whom the person at the counter took it for; null for whoever the names and contacts tell. */
  readonly sameAs: number | null
  readonly owner: ListedOwner
  readonly clock: ClockEntry | null
}

/** The contacts as they are kept, those that are none told by their place. */
export const keptContacts = (contacts: readonly ContactEntry[], country: string): Checked<Contact[]> =>
  gatherList(contacts.map((contact, i) => keptContact(contact, country, `owner.contacts[${i}]`)))
