import { gather, gatherList, unless, whenGood } from '../../core/checked.ts'
import { type Contact, type ContactEntry, keptContact } from '../../core/owner/contact.ts'
import { type Checked, good, problem } from '../../core/problems.ts'
import type {
  Chime,
  Dial,
  Duration,
  Escapement,
  Form,
  OrUnknown,
  Power,
  Strike,
} from '../../core/vocabulary/clock.ts'
import type { Read, Write } from '../file/ledger.ts'
import { findClock, findOwner } from '../rows/find-entries.ts'
import { readSettings } from '../rows/settings.ts'
import { clockOwners, clocks, ownerContacts, owners } from '../schema/index.ts'
import { accepted } from './checked-in.ts'
import { likelyClocks, likelyOwners } from './likely.ts'

/** An owner as entered. */
export interface OwnerEntry {
  readonly name: string
  readonly address: string
  readonly country: string
  readonly notes: string
}

/** An owner with contacts, as a list names them. */
export interface ListedOwner extends OwnerEntry {
  readonly contacts: readonly ContactEntry[]
}

export interface NewOwner extends ListedOwner {
  /** Owners on record who were looked at and are someone else. */
  readonly otherThan: readonly number[]
}

/** A clock as described at the counter; null and 'unknown' where nobody has looked yet. */
export interface ClockEntry {
  readonly form: Form
  readonly maker: string
  readonly serial: string
  readonly marks: string
  readonly trains: number | null
  readonly power: OrUnknown<Power>
  readonly duration: OrUnknown<Duration>
  readonly escapement: OrUnknown<Escapement>
  readonly strike: OrUnknown<Strike>
  readonly chime: OrUnknown<Chime>
  readonly chimeCorrects: boolean
  /** As `beatsOf` keeps them; '' where nobody has counted. */
  readonly beats: string
  readonly dial: OrUnknown<Dial>
  readonly jewelled: boolean
  readonly luminous: boolean
  readonly mercury: boolean
  readonly mains: boolean
  readonly notes: string
}

export interface NewClock extends ClockEntry {
  /** Clocks on record that were looked at and are others. */
  readonly otherThan: readonly number[]
}

/** `base` and `key` as a path: `owner.name`, or `name` where the owner is the whole request. */
const under = (base: string, key: string) => (base ? `${base}.${key}` : key)

/** A new owner's contacts as they are kept, where nobody on record may be the same person (`owner.likely`) but those looked at. */
export function newOwnerContacts(
  read: Read,
  { name, contacts, otherThan }: Pick<NewOwner, 'name' | 'contacts' | 'otherThan'>,
  field = '',
): Checked<Contact[]> {
  const { country } = readSettings(read).place
  const kept = gatherList(
    contacts.map((contact, i) => keptContact(contact, country, under(field, `contacts[${i}]`))),
  )
  const likely = likelyOwners(read, { name, contacts: kept.ok ? kept.value : [] }, otherThan)
  const who = likely.map(one =>
    [one.name, one.contacts[0] ?? one.address.split('\n')[0]].filter(Boolean).join(', '),
  )
  const unseen = unless(
    likely.length > 0 ? [problem('owner.likely', under(field, 'name'), { who: who.join('; ') })] : [],
    () => null,
  )
  return whenGood(gather({ kept, unseen }), both => good(both.kept))
}

/** Nothing, where no clock on record may be this one (`clock.likely`) but those looked at. */
export function newClockUnseen(
  read: Read,
  { maker, serial, otherThan }: Pick<NewClock, 'maker' | 'serial' | 'otherThan'>,
  field = '',
): Checked<null> {
  const likely = likelyClocks(read, { maker, serial }, otherThan)
  const whose = likely.map(one => one.owner ?? one.maker).filter(Boolean)
  return unless(
    likely.length > 0 ? [problem('clock.likely', under(field, 'serial'), { whose: whose.join('; ') })] : [],
    () => null,
  )
}

/** Writes a new owner with its contacts and returns its number; part of any verb that meets a new owner. */
export function enterOwner(tx: Write, owner: NewOwner, at: string, field = ''): number {
  const { contacts: _, otherThan: __, ...entry } = owner
  const kept = accepted(newOwnerContacts(tx, owner, field))
  const { id } = tx
    .insert(owners)
    .values({ ...entry, sinceAt: at })
    .returning()
    .get()
  for (const contact of kept)
    tx.insert(ownerContacts)
      .values({ ownerId: id, ...contact })
      .run()
  findOwner(tx, id)
  return id
}

/** Writes a new clock under its owner and returns its number; part of any verb that meets a new clock. */
export function enterClock(tx: Write, clock: NewClock, ownerId: number, at: string, field = ''): number {
  const { otherThan: _, ...entry } = clock
  accepted(newClockUnseen(tx, clock, field))
  const { id } = tx.insert(clocks).values(entry).returning().get()
  tx.insert(clockOwners).values({ clockId: id, ownerId, fromAt: at }).run()
  findClock(tx, id)
  return id
}
