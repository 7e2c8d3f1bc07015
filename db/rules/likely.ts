import { and, isNull, sql } from 'drizzle-orm'
import { phoneText } from '../../core/owner/contact.ts'
import {
  type ClockSeen,
  isLikelyClock,
  type OwnerSeen,
  plainWords,
  whyLikelyOwner,
} from '../../core/register/likely.ts'
import type { Form } from '../../core/vocabulary/clock.ts'
import type { Read } from '../file/ledger.ts'
import { among } from '../rows/among.ts'
import { plainMark } from '../rows/find-entries.ts'
import { ownerContacts, owners } from '../schema/index.ts'
import { inShop } from './in-shop.ts'

/** An owner on record who may be the one typed, and what tells who it is. */
export interface LikelyOwner {
  readonly id: number
  readonly name: string
  readonly address: string
  readonly why: 'contact' | 'name'
  /** Telephones and e-mail addresses as people read them. */
  readonly contacts: readonly string[]
}

/** A clock on record that may be the one typed, whose it is, and the repair it is in the shop for. */
export interface LikelyClock {
  readonly id: number
  readonly form: Form
  readonly maker: string
  readonly serial: string
  readonly ownerId: number | null
  readonly owner: string | null
  readonly inShop: number | null
}

/** As many as are looked at; a name that more have tells nobody from another. */
const mostLooked = 200

/** All the words of a text, whole; undefined when there are none. */
const allWords = (text: string): string | undefined =>
  text
    .normalize('NFC')
    .match(/[\p{L}\p{N}]+/gu)
    ?.map(word => `"${word}"`)
    .join(' ')

/** The subjects of a kind in whose words one of the queries is found. */
const wordsFound = (
  read: Read,
  kind: 'owner' | 'clock',
  queries: readonly (string | undefined)[],
): number[] => {
  const query = queries
    .filter(Boolean)
    .map(one => `(${one})`)
    .join(' OR ')
  if (query === '') return []
  const rows = read.all<{ id: number }>(
    sql`SELECT e.subject_id AS id FROM find_words w JOIN find_entries e ON e.id = w.rowid
      WHERE find_words MATCH ${query} AND e.kind = ${kind} ORDER BY w.rowid DESC LIMIT ${mostLooked}`,
  )
  return rows.map(({ id }) => id)
}

const reachedBy = (read: Read, values: readonly string[]): number[] =>
  read
    .select({ id: ownerContacts.ownerId })
    .from(ownerContacts)
    .where(
      and(
        sql`${ownerContacts.value} IN (SELECT value FROM json_each(${JSON.stringify(values)}))`,
        isNull(ownerContacts.struckReason),
      ),
    )
    .all()
    .map(({ id }) => id)

function ownersWithContacts(read: Read, ids: readonly number[]) {
  const found = read
    .select({ id: owners.id, name: owners.name, address: owners.address })
    .from(owners)
    .where(and(among(owners.id, ids), isNull(owners.mergedIntoId)))
    .all()
  const contacts = read
    .select({ ownerId: ownerContacts.ownerId, kind: ownerContacts.kind, value: ownerContacts.value })
    .from(ownerContacts)
    .where(and(among(ownerContacts.ownerId, ids), isNull(ownerContacts.struckReason)))
    .all()
  const byOwner = Map.groupBy(contacts, ({ ownerId }) => ownerId)
  return found.map(owner => ({ ...owner, contacts: byOwner.get(owner.id) ?? [] }))
}

const shown = ({ kind, value }: { kind: string; value: string }) =>
  kind === 'phone' ? phoneText(value) : value

/** Owners on record who may be the one typed, apart from those who were said to be someone else; the likeliest first. */
export function likelyOwners(read: Read, typed: OwnerSeen, otherThan: readonly number[] = []): LikelyOwner[] {
  const ids = new Set([
    ...reachedBy(
      read,
      typed.contacts.map(({ value }) => value),
    ),
    ...wordsFound(read, 'owner', [allWords(typed.name), allWords(plainWords(typed.name).join(''))]),
  ])
  for (const id of otherThan) ids.delete(id)
  return ownersWithContacts(read, [...ids])
    .flatMap(owner => {
      const why = whyLikelyOwner(typed, owner)
      return why ? [{ ...owner, contacts: owner.contacts.map(shown), why }] : []
    })
    .sort((a, b) => a.why.localeCompare(b.why) || b.id - a.id)
}

const marksFound = (read: Read, serial: string): number[] => {
  const mark = plainMark(serial)
  if ([...mark].length < 3) return []
  const rows = read.all<{ id: number }>(
    sql`SELECT e.subject_id AS id FROM find_marks m JOIN find_entries e ON e.id = m.rowid
      WHERE find_marks MATCH ${`"${mark}"`} AND e.kind = 'clock' ORDER BY m.rowid DESC LIMIT ${mostLooked}`,
  )
  return rows.map(({ id }) => id)
}

const clocksAndHolders = (read: Read, ids: readonly number[]): LikelyClock[] =>
  read.all<LikelyClock>(sql`
    SELECT c.id, c.form, c.maker, c.serial, o.id AS ownerId, o.name AS owner,
      (SELECT repairs.number FROM repairs WHERE repairs.clock_id = c.id AND ${inShop}) AS inShop
    FROM clocks c
    LEFT JOIN clock_owners co ON co.clock_id = c.id AND co.until_at IS NULL
    LEFT JOIN owners o ON o.id = co.owner_id
    WHERE c.id IN (SELECT value FROM json_each(${JSON.stringify(ids)}))
    ORDER BY c.id DESC`)

/** Clocks on record that may be the one typed, apart from those that were said to be others; the newest first. */
export function likelyClocks(read: Read, typed: ClockSeen, otherThan: readonly number[] = []): LikelyClock[] {
  const ids = new Set([
    ...marksFound(read, typed.serial),
    ...wordsFound(read, 'clock', [allWords(typed.serial), allWords(plainMark(typed.serial))]),
  ])
  for (const id of otherThan) ids.delete(id)
  return clocksAndHolders(read, [...ids]).filter(clock => isLikelyClock(typed, clock))
}
